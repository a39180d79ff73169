/**
 * The picture of the stand-in workbook, from what Excel was asked to do.
 */
import type { Validation } from "../../src/workbook/data";
import type { StandIn } from "./excel-proxies";
import { blockOf, type Done, type Sheet } from "./excel-workbook";
import {
  absolute,
  blockText,
  cellsOf,
  ruleText,
  sorted,
  type ChartPicture,
  type Picture,
  type SheetPicture,
} from "./picture";

export const pictureOfExcel = ({ sheets, active }: StandIn): Picture => ({
  sheets: sheets.map(pictureOfSheet),
  active,
});

const addressOf = (place: string) => {
  const [row, column] = place.split(" ").map(Number);
  return absolute(row!, column!).replaceAll("$", "");
};
/** "GetRanges(B3:B5,B10).Format" as blocks. */
const blocksOn = ({ on }: Done) =>
  /^GetRanges?\(([^)]*)\)/
    .exec(on)![1]!
    .split(",")
    .map((address) => blockOf(address));

function pictureOfSheet({ name, cells, formats, names, notes, done }: Sheet): SheetPicture {
  const set = (property: string, on = /./) =>
    done.filter((each) => each.name === property && on.test(each.on));
  const last = (property: string, on: RegExp) => set(property, on).at(-1)?.args[0];
  const lastText = (property: string, on: RegExp) => last(property, on) as string | undefined;
  const frozenAt = lastText("FreezeAt", /^FreezePanes$/);
  const corner = frozenAt === undefined ? undefined : blockOf(frozenAt);
  const zoom = last("Zoom", /^PageLayout$/) as { verticalFitToPages?: number } | undefined;
  const gridlines = done.find((each) => each.on === "" && each.name === "Gridlines");
  return {
    name,
    contents: sorted([...cells].map(([place, { formula, value }]) => [addressOf(place), formula ?? value])),
    formats: sorted([...formats].map(([place, format]) => [addressOf(place), format])),
    names: sorted(names.map((each) => [each.name, each.own ?? each.value ?? ""])),
    // row by row
    merges: set("Merge")
      .flatMap(blocksOn)
      .flatMap(({ row, lastRow, ...columns }) =>
        Array.from({ length: lastRow - row + 1 }, (_, down) =>
          blockText({ ...columns, row: row + down, lastRow: row + down }),
        ),
      )
      .filter((each) => each.includes(":"))
      .sort(),
    columnWidths: widthsOf(set("ColumnWidth")),
    rowHeights: Object.fromEntries(
      set("RowHeight").flatMap((each) =>
        blocksOn(each).flatMap(({ row, lastRow }) =>
          Array.from({ length: lastRow - row + 1 }, (_, down) => [row + down + 1, Number(each.args[0])]),
        ),
      ),
    ),
    frozen: {
      rows: corner ? corner.lastRow + 1 : Number(last("FreezeRows", /^FreezePanes$/) ?? 0),
      columns: corner ? corner.lastColumn + 1 : Number(last("FreezeColumns", /^FreezePanes$/) ?? 0),
    },
    gridlines: (gridlines?.args[0] ?? true) as boolean,
    rules: rulesOf(done),
    highlights: highlightsOf(done),
    charts: chartsOf(done),
    notes: sorted(notes),
    tables: set("Add", /^Tables$/).map(({ args }) => /GetRange\((.*)\)$/.exec(String(args[0]))![1]!),
    page: {
      landscape: last("Orientation", /^PageLayout$/) === "Landscape",
      tall: zoom?.verticalFitToPages ?? 0,
      area: lastText("SetPrintArea", /^PageLayout$/) ?? "",
    },
  };
}

/** A character of the default font is 5.25 points wide, and a cell has 3.75 more. */
function widthsOf(set: readonly Done[]): number[] {
  const widths: number[] = [];
  for (const each of set) {
    for (const { column, lastColumn } of blocksOn(each)) {
      for (let at = column; at <= lastColumn; at++) widths[at] = (Number(each.args[0]) - 3.75) / 5.25;
    }
  }
  return widths;
}

const DAY_ZERO = Date.UTC(1899, 11, 30);
const bound = (value: unknown) =>
  typeof value === "string" ? (Date.parse(value) - DAY_ZERO) / 86_400_000 : Number(value);
const KINDS: Readonly<Record<string, Validation["kind"]>> = { wholeNumber: "whole" };

/** A rule comes before what is said of it and whether a blank will do. */
function rulesOf(done: readonly Done[]): Record<string, string> {
  const about = done.filter(({ on }) => on.endsWith(".DataValidation"));
  return sorted(
    about.flatMap((each, index) => {
      if (each.name !== "Rule") return [];
      const [[kind, limits]] = Object.entries(each.args[0] as object) as [[string, Record<string, unknown>]];
      const rest = about.slice(index + 1);
      const next = rest.findIndex(({ name }) => name === "Rule");
      const own = rest.slice(0, next < 0 ? undefined : next);
      const prompt = own.find(({ name }) => name === "Prompt")!.args[0] as { title: string; message: string };
      const allowBlank = !own.some(({ name }) => name === "IgnoreBlanks");
      const bounds =
        kind === "list"
          ? [String(limits.source)]
          : [limits.formula1, limits.formula2].filter((limit) => limit !== undefined).map(bound);
      const text = ruleText(KINDS[kind] ?? (kind as Validation["kind"]), bounds, { allowBlank, ...prompt });
      return blocksOn(each)
        .flatMap(cellsOf)
        .map((address) => [address, text] as const);
    }),
  );
}

/** Each rule is followed by its fill. */
function highlightsOf(done: readonly Done[]): Record<string, string[]> {
  const found = new Map<string, string[]>();
  const about = done.filter(({ on }) => /\.ConditionalFormats\b/.test(on));
  for (const [index, each] of about.entries()) {
    if (each.name !== "Rule") continue;
    const { formula1 } = each.args[0] as { formula1: string };
    const word = /^="(.*)"$/.exec(formula1)![1]!.replaceAll('""', '"');
    const fill = about.slice(index).find(({ on }) => on.endsWith(".Fill"))!.args[0];
    for (const address of blocksOn(each).flatMap(cellsOf)) {
      found.set(address, [...(found.get(address) ?? []), `${word} ${String(fill)}`]);
    }
  }
  return sorted([...found].map(([address, words]) => [address, words.sort()]));
}

const CHARTS: Readonly<Record<string, string>> = {
  XYScatterLinesNoMarkers: "lines",
  BarClustered: "bars",
  BarStacked: "stackedBars",
};

/** What follows a chart's making, up to the next one's, is its own. */
function chartsOf(done: readonly Done[]): ChartPicture[] {
  const charts: { kind: string; title: string; series: number; place: string }[] = [];
  for (const { on, name, args } of done.filter((each) => each.on.startsWith("Charts"))) {
    if (on === "Charts") charts.push({ kind: CHARTS[String(args[0])]!, title: "", series: 1, place: "" });
    const chart = charts.at(-1)!;
    if (name === "SetPosition") chart.place = args.join(":");
    else if (name === "Add" && on.endsWith(".Series")) chart.series++;
    else if (name === "Text" && /\)\.Title$/.test(on)) chart.title = String(args[0]);
  }
  return charts;
}
