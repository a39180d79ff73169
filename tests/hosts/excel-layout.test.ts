/**
 * Sizes, merges, pages, names and rules as they reach Excel, on the genuine Excel proxies.
 */
import type { Validation } from "../../src/workbook/data";
import { MARGIN_INCHES } from "../../src/workbook/styles";
import { sheetOf, cell, written, settings, matching } from "../support/excel-writing";

describe("layout", () => {
  test("widths, heights, merges, frozen rows and pages", async () => {
    const workbook = await written([
      sheetOf(
        [
          cell("A note that runs on", { style: "note" }),
          cell("Another", { row: 1, style: "note" }),
          cell("Third", { row: 4 }),
        ],
        {
          columnWidths: [38, 14, 14, 11, 14],
          rowHeights: new Map([
            [0, 29],
            [1, 29],
            [4, 29],
            [5, 56],
          ]),
          merges: [0, 1, 4].map((row) => ({ row, column: 0, lastColumn: 4 })),
          frozenRows: 2,
          gridlines: false,
          pagesTall: 2,
        },
      ),
    ]);
    expect(settings(workbook, "ColumnWidth")).toEqual([
      "GetRange(A:A).Format: 203.25",
      "GetRanges(B:C,E:E).Format: 77.25",
      "GetRange(D:D).Format: 61.5",
    ]);
    expect(settings(workbook, "RowHeight")).toEqual([
      "GetRanges(1:2,5:5).Format: 29",
      "GetRange(6:6).Format: 56",
    ]);
    expect(settings(workbook, "Merge")).toEqual(["GetRange(A1:E2): true", "GetRange(A5:E5): true"]);
    expect(settings(workbook, "WrapText")).toEqual(["GetRanges(A1:E2,A5:E5).Format: true"]);
    expect(settings(workbook, "Italic")).toEqual(["GetRange(A1:E2).Format.Font: true"]);
    expect(settings(workbook, "FreezeRows")).toEqual(["FreezePanes: 2"]);
    const points = MARGIN_INCHES * 72;
    const page = matching(workbook, /^PageLayout$/).map(({ name, args }) => [name, args[0]]);
    expect(Object.fromEntries(page)).toEqual({
      Orientation: "Portrait",
      PaperSize: "A4",
      Zoom: { horizontalFitToPages: 1, verticalFitToPages: 2 },
      LeftMargin: points,
      RightMargin: points,
      TopMargin: points,
      BottomMargin: points,
    });
  });

  test("as many pages tall as it takes is said by saying nothing", async () => {
    const workbook = await written([sheetOf([cell(1)], { pagesTall: 0 })]);
    expect(matching(workbook, /^PageLayout$/, "Zoom").map(({ args }) => args[0])).toEqual([
      { horizontalFitToPages: 1 },
    ]);
  });

  test("names hold within their sheet", async () => {
    const names = [
      { name: "plan_volume_hL", row: 4, column: 1 },
      { name: "plan_total", row: 9, column: 27 },
    ];
    const workbook = await written([sheetOf([cell(1)], { name: "Plan · Jo's", names })]);
    expect(
      matching(workbook, /^Names$/, "Add").map(({ sheet, args }) => [sheet!.name, args[0], args[1]]),
    ).toEqual([
      ["Plan · Jo's", "plan_volume_hL", "='Plan · Jo''s'!$B$5"],
      ["Plan · Jo's", "plan_total", "='Plan · Jo''s'!$AB$10"],
    ]);
  });

  test("validations say what is allowed, cells under one rule together", async () => {
    const common = { title: "Volume", message: "Give 0 to 10 hL.", allowBlank: false };
    const validations: Validation[] = [
      { ...common, row: 0, column: 1, kind: "decimal", min: 0.5, max: 10 },
      { ...common, row: 1, column: 1, kind: "decimal", min: 0.5, max: 10 },
      { ...common, row: 5, column: 1, kind: "decimal", min: 0.5, max: 10 },
      { ...common, row: 6, column: 1, kind: "whole", min: 1, max: 60 },
      { ...common, row: 7, column: 1, kind: "date", min: 61, max: 46_000 },
      { ...common, row: 8, column: 1, kind: "textLength", max: 40, allowBlank: true },
      { ...common, row: 9, column: 1, kind: "list", options: ["EU", "OIV"] },
      { ...common, row: 10, column: 1, kind: "list", options: ["white, still", "red"] },
      {
        ...common,
        row: 11,
        column: 1,
        kind: "list",
        options: Array.from({ length: 60 }, (_, index) => `choice ${index}`),
      },
    ];
    const workbook = await written([sheetOf([cell(1)], { validations })]);
    const rules = matching(workbook, /DataValidation$/, "Rule").map(({ on, args }) => [
      /\((.*)\)/.exec(on)![1],
      args[0],
    ]);
    expect(rules).toEqual([
      ["B1:B2,B6", { decimal: { formula1: 0.5, formula2: 10, operator: "Between" } }],
      ["B7", { wholeNumber: { formula1: 1, formula2: 60, operator: "Between" } }],
      ["B8", { date: { formula1: "1900-03-01", formula2: "2025-12-09", operator: "Between" } }],
      ["B9", { textLength: { formula1: 40, operator: "LessThanOrEqualTo" } }],
      ["B10", { list: { inCellDropDown: true, source: "EU,OIV" } }],
      // not sayable as one text: the prompt remains
      ["B11", { custom: { formula: "=TRUE" } }],
      ["B12", { custom: { formula: "=TRUE" } }],
    ]);
    const on = (name: string) =>
      matching(workbook, /DataValidation$/, name).map((each) => /\((.*)\)/.exec(each.on)![1]);
    expect(on("IgnoreBlanks")).toEqual(["B1:B2,B6", "B7", "B8", "B10", "B11", "B12"]);
    expect(on("Prompt")).toHaveLength(7);
    expect(matching(workbook, /DataValidation$/, "Prompt")[0]!.args).toEqual([
      { showPrompt: true, title: "Volume", message: "Give 0 to 10 hL." },
    ]);
    expect(on("ErrorAlert")).toEqual(["B1:B2,B6", "B7", "B8", "B9", "B10"]);
    expect(matching(workbook, /DataValidation$/, "ErrorAlert")[0]!.args).toEqual([
      { showAlert: true, style: "Stop", title: "Volume", message: "Give 0 to 10 hL." },
    ]);
  });

  test("titles and messages are cut to what Excel takes", async () => {
    const validations: Validation[] = [
      {
        row: 0,
        column: 0,
        kind: "textLength",
        max: 5,
        allowBlank: true,
        title: "T".repeat(40),
        message: "m".repeat(300),
      },
    ];
    const workbook = await written([sheetOf([cell(1)], { validations })]);
    const lengths = ["Prompt", "ErrorAlert"].map((name) => {
      const { title, message } = matching(workbook, /DataValidation$/, name)[0]!.args[0] as {
        title: string;
        message: string;
      };
      return [title.length, message.length];
    });
    expect(lengths).toEqual([
      [32, 255],
      [32, 224],
    ]);
  });
});
