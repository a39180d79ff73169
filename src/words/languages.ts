/**
 * The languages there are. One more is one file beside fr.ts and one line here.
 */
import type { Catalogue } from "./translate";

export interface LanguageChoice {
  /** As in BCP 47. */
  readonly code: string;
  /** In its own words. */
  readonly name: string;
  readonly load: () => Promise<Catalogue>;
}

export const LANGUAGES: readonly [LanguageChoice, ...LanguageChoice[]] = [
  { code: "en", name: "English", load: () => Promise.resolve({}) },
  { code: "fr", name: "Français", load: async () => (await import("./fr")).fr },
];

/** The language nearest to what somebody's system speaks: "fr-CA" is French. */
export const nearest = (spoken: string): LanguageChoice =>
  LANGUAGES.find(({ code }) => spoken.toLowerCase().split("-")[0] === code) ?? LANGUAGES[0];
