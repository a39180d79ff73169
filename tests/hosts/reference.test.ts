/**
 * What defined names refer to, as Excel and the grid write it.
 */
import { placeIn } from "../../src/hosts/reference";

test.each<[string, string, number, number]>([
  ["Plan · Brut", "='Plan · Brut'!$B$12", 11, 1],
  ["Plan · Brut", "'Plan · Brut'!$B$12", 11, 1],
  ["Sheet1", "=Sheet1!$AA$1", 0, 26],
  ["Sheet1", "Sheet1!A1", 0, 0],
  ["Sheet1", "=sheet1!XFD1048576", 1_048_575, 16_383],
  ["Jo's", "='Jo''s'!$C$3", 2, 2],
  ["a!b", "='a!b'!$C$3", 2, 2],
])("in %s, %s", (sheet, reference, row, column) =>
  expect(placeIn(sheet, reference)).toEqual({ row, column }),
);

test.each<[unknown]>([
  ["='Plan'!#REF!"],
  ["=#REF!$B$12"],
  ["#REF!"],
  ["='Plan'!$B$12:$B$13"],
  ["='Plan'!$B$12,'Plan'!$C$12"],
  ["='Other'!$B$12"],
  ["='[Book2.xlsx]Plan'!$B$12"],
  ["='Plan'!$B:$B"],
  ["='Plan'!$B$0"],
  ["=0.5"],
  ['="Plan!B12"'],
  ["=Plan!$B$12*2"],
  ["=OFFSET(Plan!$B$12,1,0)"],
  ["B12"],
  [""],
  [12],
  [null],
])("not one cell of the sheet: %j", (reference) => expect(placeIn("Plan", reference)).toBeUndefined());
