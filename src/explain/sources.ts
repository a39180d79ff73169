/**
 * What the workings rest on, and the cautions that go with them.
 */
import { SOLUBILITY_SURE_C } from "../cellar/carbonation";
import type { Source } from "../cellar/rules/source";
import type { Cited, Mark } from "./types";

const cited = (text: string, mark: Mark): Cited => ({ text, mark });

export const MASS_BALANCE = cited("mass balance", "derived");
export const ARITHMETIC = cited("arithmetic", "exact");
export const MOLAR_MASSES = cited("molar masses; 1.0526 read in an 1898 liqueur handbook", "derived");
export const ICUMSA = cited("ICUMSA density of sucrose solutions at 20 °C", "read");
export const SOLUBILITY = cited(
  "solubility at 20 °C: Commission Regulation (EEC) 2676/90, annex ch. 37, and OIV-MA-AS314",
  "read",
);
export const VAN_T_HOFF = cited(
  "solubility at other temperatures: van 't Hoff, fitted to the published 0 to 25 °C table",
  "derived",
);
export const CLOSED_BOTTLE = cited("closed bottle: International Physics Olympiad 2025, theory Q3", "read");
export const GAUGE_TABLE = cited("OIV-MA-AS314-02; Regulation (EC) 1293/2005", "memory");
export const LAST_DAY_RULE = cited("periods in months: Regulation (EEC, Euratom) 1182/71 art. 3", "read");
export const COMMON_PRACTICE = cited("common practice, no source", "practice");
export const FREEZING = cited("colligative lowering of the freezing point", "derived");
export const ALCOHOL_UNITS = cited("Delegated Regulation (EU) 2019/33 art. 44, its predecessor", "read");
export const ENERGY = cited("Regulation (EU) 1169/2011 annex XIV", "read");
export const FILL_ERROR = cited("Directive 76/211/EEC annex I, 2.4; above 10 L OIML R 87", "memory");
export const EXACT_UNITS = cited(
  "SI brochure; standard atmosphere, pound and gravity by definition",
  "exact",
);

export const BOTTLE_PHYSICS = [SOLUBILITY, VAN_T_HOFF, CLOSED_BOTTLE] as const;

/** A row's own source, with its day. */
export const ofRow = ({ text, mark, recorded }: Source): Cited => ({ text, mark, recorded });

/** "Directive 2007/45/EC annex (read, recorded 2026-11-25)"; "common practice, no source". */
export function citedText({ text, mark, recorded }: Cited): string {
  if (mark === "practice") return recorded === undefined ? text : `${text} (recorded ${recorded})`;
  return `${text} (${mark}${recorded === undefined ? "" : `, recorded ${recorded}`})`;
}

export const BOTTLE_CARE =
  "A filled bottle can burst. The glass maker's own rating decides, at the hottest day in storage.";
export const READING_CARE = "Bottles are under pressure while they are read: face and hand protection.";
export const RIDDLING_CARE = "Bottles are under pressure: face and hand protection at every turn.";
export const NECK_BATH_CARE = "Neck baths are below −20 °C: gloves, eye protection, ventilation.";
export const LAW_CARE = "Local law decides; the tolerance of an analysis is no target.";

/** Said where the solubility is carried beyond the temperatures it was fitted to. */
export function temperatureCaution(...temperaturesC: readonly number[]): string[] {
  const { min, max } = SOLUBILITY_SURE_C;
  const beyond = temperaturesC.filter((t) => t < min || t > max);
  return beyond.length === 0
    ? []
    : [`The solubility is an interpolation, sure from ${min} to ${max} °C; ${beyond[0]} °C lies beyond.`];
}
