/**
 * AGEING functions.
 */
import { addMonths } from "../cellar/ageing";
import { designationNamed, designations } from "../cellar/rules/designations";
import { sourceText } from "../cellar/rules/source";
import { answer, domains, given, optionalWord } from "./arguments";

const CLOCKS = ["lees", "total"] as const;

function minimumMonths(designation: unknown, clock: unknown): number {
  const { leesMonths, totalMonths } = designationNamed(designation, "designation");
  return optionalWord(CLOCKS, clock, "clock", "lees") === "lees" ? leesMonths : totalMonths;
}

/**
 * Months that a designation asks for, on the lees or in all.
 * @customfunction AGEING.MINIMUM
 * @param designation The designation, as "Crémant" or "Cava Reserva"; AGEING.DESIGNATIONS lists them.
 * @param [clock] "lees" (tirage to disgorging) or "total" (tirage to release); blank = "lees".
 * @returns months
 * @equation table look-up
 * @source the table's own row: mostly trade bodies' pages, secondary; the local text decides
 * @example AGEING.MINIMUM("EU traditional method") = 9
 */
export function ageingMinimum(designation: string, clock?: string): number {
  return answer(() => minimumMonths(designation, clock));
}

/**
 * Earliest date that a designation allows, by the last-day rule: same day of the last month, or its last day.
 * @customfunction AGEING.EARLIEST
 * @param tirage_date Tirage date, a spreadsheet date (1 March 1900 to 31 December 9999); a time of day is dropped.
 * @param designation The designation, as "Crémant" or "Cava Reserva"; AGEING.DESIGNATIONS lists them.
 * @param [clock] "lees" (tirage to disgorging) or "total" (tirage to release); blank = "lees".
 * @returns a spreadsheet date
 * @equation tirage date + minimum months
 * @source periods in months: Regulation (EEC, Euratom) 1182/71 art. 3; minima as AGEING.MINIMUM
 * @example AGEING.EARLIEST(DATE(2024, 5, 31), "EU traditional method") = DATE(2025, 2, 28)
 */
export function ageingEarliest(tirage_date: number, designation: string, clock?: string): number {
  return answer(() =>
    addMonths(given(domains.dateSerial, tirage_date, "tirage_date"), minimumMonths(designation, clock)),
  );
}

/**
 * Every designation known, a row for each: name, months on the lees, months in all, source.
 * @customfunction AGEING.DESIGNATIONS
 * @returns rows of four cells
 * @equation the table itself
 * @source each row's own: mostly trade bodies' pages, secondary; the local text decides
 * @example INDEX(AGEING.DESIGNATIONS(), 1, 1) = "EU traditional method"
 */
export function ageingDesignations(): any[][] {
  return designations.map(({ name, leesMonths, totalMonths, source }) => [
    name,
    leesMonths,
    totalMonths,
    sourceText(source),
  ]);
}
