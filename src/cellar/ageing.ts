/**
 * Dates as spreadsheet serials (day 1 = 1 January 1900, with the calendar right from 1 March 1900), and
 * periods in months by the last-day rule: they end on the same day of the last month, or on its last day.
 */
import { domains } from "./domains";
import { unanswerable } from "./refusal";

const MS_PER_DAY = 86_400_000;
/** The serial of 1 January 1970. */
const UNIX_EPOCH_SERIAL = 25_569;

export function serialFromDate(year: number, month: number, day: number): number {
  return Date.UTC(year, month - 1, day) / MS_PER_DAY + UNIX_EPOCH_SERIAL;
}

export function dateFromSerial(serial: number): { year: number; month: number; day: number } {
  const date = new Date((Math.floor(serial) - UNIX_EPOCH_SERIAL) * MS_PER_DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** "2026-04-14" to a serial; undefined where it is not a date of the calendar. */
export function serialFromIso(iso: string): number | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  if (!match) return undefined;
  const serial = serialFromDate(Number(match[1]), Number(match[2]), Number(match[3]));
  return isoFromSerial(serial) === iso ? serial : undefined;
}

export function isoFromSerial(serial: number): string {
  const { year, month, day } = dateFromSerial(serial);
  const two = (part: number) => String(part).padStart(2, "0");
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`;
}

/** The end of a period of whole months: same day of the last month, or its last day. */
export function addMonths(serial: number, months: number): number {
  const { year, month, day } = dateFromSerial(serial);
  const lastDay = dateFromSerial(serialFromDate(year, month + months + 1, 0)).day;
  const end = serialFromDate(year, month + months, Math.min(day, lastDay));
  if (end > domains.dateSerial.max) {
    throw unanswerable(
      "tirage_date",
      serial,
      `${months} months later lies beyond the calendar; give an earlier date`,
    );
  }
  return end;
}
