/**
 * What stands in cells that a formula names, on the genuine Excel proxies. What is not there is a null object, and
 * whatever is asked of that is one too (learn.microsoft.com, "*OrNullObject methods and properties").
 */
import { valuesOf } from "../../src/hosts/excel/references";
import { standInWorkbook } from "../support/excel-proxies";
import type { Name } from "../support/excel-workbook";

const own = (name: string, address: string): Name => ({ name, own: address });
const names: Name[] = [
  { name: "price", value: "=Prices!$A$1" },
  { name: "volume", value: "=Prices!$A$2" },
  { name: "rate", value: "=0.5" },
  { name: "gone", value: "=#REF!$A$1" },
  { name: "YTD2026", value: "=Prices!$A$1:$A$2" },
];
const open = () =>
  standInWorkbook({
    names,
    sheets: [
      {
        name: "Plan · Jo's",
        cells: {
          A1: { value: 1 },
          B1: { value: "Brut" },
          A2: { value: true },
          A3: { value: "#N/A", formula: "=NA()", error: true },
          A4: { value: "#N/A" },
          A5: { value: "", formula: '=""' },
        },
        names: [own("volume", "$A$1:$B$2"), own("broken", "#REF!")],
      },
      { name: "Prices", cells: { A1: { value: 9.5 }, A2: { value: 7 } } },
    ],
  });
const of = async (...references: string[]) => {
  const workbook = open();
  const values = await valuesOf("Plan · Jo's", references);
  expect(workbook.roundTrips).toHaveLength(1);
  expect(workbook.roundTrips[0]!.operations).toEqual([]);
  return values;
};

test.each<[string, unknown]>([
  ["A1", [[1]]],
  ["$B$1", [["Brut"]]],
  ["b$1", [["Brut"]]],
  [
    "A1:B2",
    [
      [1, "Brut"],
      [true, null],
    ],
  ],
  ["$A$1:$B$1", [[1, "Brut"]]],
  ["C7", [[null]]],
  // an empty text is no blank
  ["A5", [[""]]],
  ["Prices!A1", [[9.5]]],
  ["'Prices'!$A$1:$A$3", [[9.5], [7], [null]]],
  ["'plan · jo''s'!A1", [[1]]],
])("%s", async (reference, expected) => expect(await of(reference)).toEqual([expected]));

test.each<[string, unknown]>([
  ["price", [[9.5]]],
  ["PRICE", [[9.5]]],
  // the sheet's own goes before the workbook's
  [
    "volume",
    [
      [1, "Brut"],
      [true, null],
    ],
  ],
])("by the name %s", async (reference, expected) => expect(await of(reference)).toEqual([expected]));

test.each([
  ["an error in the cell", "A3"],
  ["an error within the range", "A1:B4"],
  ["a sheet that is not there", "Elsewhere!A1"],
  ["a sheet with an apostrophe that is not there", "'Jo''s'!A1:B2"],
  ["a name that is not there", "nothing"],
  ["a constant", "rate"],
  ["a name whose cells are gone", "gone"],
  ["a name of the sheet whose cells are gone", "broken"],
  ["no reference", "A1+B1"],
])("%s is nothing: %s", async (_what, reference) => expect(await of(reference)).toEqual([undefined]));

test("a text that looks like an error is a text", async () => {
  expect(await of("A4")).toEqual([[["#N/A"]]]);
});

test("each for itself: what is not there takes nothing else along", async () => {
  expect(await of("Elsewhere!A1", "A1", "nothing", "A3", "Prices!A1")).toEqual([
    undefined,
    [[1]],
    undefined,
    undefined,
    [[9.5]],
  ]);
});

test("what looks like an address beyond the last cell is a name, if there is one", async () => {
  expect(await of("YTD2026", "ZZZ1", "A9999999", "A0", "A1")).toEqual([
    [[9.5], [7]],
    undefined,
    undefined,
    undefined,
    [[1]],
  ]);
});

test("nothing asked, nothing answered", async () => {
  open();
  expect(await valuesOf("Plan · Jo's", [])).toEqual([]);
});
