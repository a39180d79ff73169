/**
 * Ageing minima by designation, months on the lees and in all: trade bodies' pages (secondary), Sekt b.A. from memory.
 * Where a page names one figure it stands for both clocks.
 */
import { designationNamed, designations } from "../../src/cellar/rules/designations";

const TABLE: readonly (readonly [string, number, number])[] = [
  ["EU traditional method", 9, 9],
  ["Champagne non-vintage", 12, 15],
  ["Champagne vintage", 12, 36],
  ["Crémant", 9, 12],
  ["Cava", 9, 9],
  ["Cava Reserva", 18, 18],
  ["Cava Gran Reserva", 30, 30],
  ["Cava Paraje", 36, 36],
  ["Franciacorta", 18, 18],
  ["Franciacorta Satèn", 24, 24],
  ["Franciacorta Rosé", 24, 24],
  ["Franciacorta Millesimato", 30, 30],
  ["Franciacorta Riserva", 60, 60],
  ["Trento", 15, 15],
  ["Trento Millesimato", 24, 24],
  ["Trento Riserva", 36, 36],
  ["Cap Classique", 12, 12],
  ["Sekt b.A.", 9, 9],
];

test.each(TABLE)("%s: %d on the lees, %d in all", (name, lees, total) => {
  const found = designationNamed(name, "designation");
  expect([found.name, found.leesMonths, found.totalMonths]).toEqual([name, lees, total]);
});

test("18 rows, their sums, and a source and mark on each: an edited digit fails", () => {
  expect(designations).toHaveLength(18);
  expect(designations.reduce((sum, { leesMonths }) => sum + leesMonths, 0)).toBe(387);
  expect(designations.reduce((sum, { totalMonths }) => sum + totalMonths, 0)).toBe(417);
  for (const { name, source } of designations) {
    expect([name, source.mark]).toEqual([name, name === "Sekt b.A." ? "memory" : "secondary"]);
    expect(source.text).not.toBe("");
    expect(source.recorded).toMatch(/^\d{4}-\d\d-\d\d$/u);
  }
});

test.each([
  ["cremant", "Crémant"],
  ["  CAVA   GRAN-RESERVA ", "Cava Gran Reserva"],
  ["franciacorta saten", "Franciacorta Satèn"],
  ["champagne non vintage", "Champagne non-vintage"],
])("%p is %s", (typed, name) => expect(designationNamed(typed, "designation").name).toBe(name));
