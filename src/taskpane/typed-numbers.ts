/**
 * Numbers and dates as people type and read them, with a point or a comma for the decimals.
 */
import { dateFromSerial } from "../cellar/ageing";
import { domains, isWithin } from "../cellar/domains";

/** How numbers and dates are shown: as the system does, unless the pane speaks another language than that. */
let readerLocale: string | undefined;
export function showFor(locale: string | undefined): void {
  readerLocale = locale;
}

/** The number, or the text itself where it is none, so that the refusal can quote it. */
export function typedNumber(typed: string): number | string | null {
  const text = typed.trim().replace(/^[−–]/, "-");
  if (text === "") return null;
  // "1,000" and "1.000" are a thousand to some and one to others: not guessed at. "0,500" can only be a half.
  if (isAmbiguous(text)) return text;
  const number = /^-?\d+([.,]\d+)?$/.test(text) ? Number(text.replace(",", ".")) : Number.NaN;
  return Number.isFinite(number) ? number : text;
}

/** What to do about a number that is not guessed at. */
export const WITHOUT_MARKS = "Write numbers without marks for thousands: 1250, or 1.25";

/** Whether a text could be a number with marks for thousands. */
export const isAmbiguous = (text: string) => /^-?[1-9]\d{0,2}([.,]\d{3})+$/.test(text.trim());

const SHOWN_DIGITS = 6;

/** A number for an input box: short, never with an exponent, with the reader's own mark for the decimals. */
export function shownNumber(value: number, locale = readerLocale): string {
  const plain = String(Number(value.toPrecision(SHOWN_DIGITS)));
  return hasDecimalComma(locale) ? plain.replace(".", ",") : plain;
}

const hasDecimalComma = (locale: string | undefined) => (1.5).toLocaleString(locale) === "1,5";

/** A result with its decimals and thousands, in the reader's own locale. */
export function shownResult(value: number, decimals: number, locale = readerLocale): string {
  return value.toLocaleString(locale, { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
}

/** A day of the calendar as the reader writes it; nothing that a sheet could hold is a dash. */
export function shownDate(serial: number, locale = readerLocale): string {
  if (!isWithin(domains.dateSerial, serial)) return "–";
  const { year, month, day } = dateFromSerial(serial);
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.toLocaleDateString(locale, {
    day: "numeric",
    month: "short",
    year: "numeric",
    timeZone: "UTC",
  });
}
