/**
 * Charts in files: read back by a second library's package reader, held against the published schemas, and drawn by
 * LibreOffice, whose own account of the chart is looked at.
 */
import { readFile } from "node:fs/promises";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import type { ChartData, SheetData, Validation } from "../../src/workbook/data";
import { bars, chartSheet, column, lines, stages } from "../support/charts";
import { convertBytes, libreOfficeTest, removeConversions } from "../support/libreoffice";
import { packageParts, packageProblems, schemaTest } from "../support/ooxml";

const SHEET = "'Charts &amp; baker''s dozen'";
const other: SheetData = { ...chartSheet, name: "Other", charts: [], landscape: false };

const again: SheetData = { ...chartSheet, name: "Again", charts: [bars, stages] };

const parts = async (...sheets: readonly SheetData[]) => packageParts(await writeWorkbookFile({ sheets }));
const partOf = async (chart: ChartData) =>
  (await parts({ ...chartSheet, charts: [chart] })).get("xl/charts/chart1.xml")!;
const series = (xml: string) => [...xml.matchAll(/<c:ser>.*?<\/c:ser>/g)].map(([each]) => each);
const axis = (xml: string, kind: string) =>
  [...xml.matchAll(new RegExp(`<c:${kind}>.*?</c:${kind}>`, "g"))].map(([each]) => each);

afterAll(removeConversions);

describe("lines", () => {
  let xml: string;
  beforeAll(async () => (xml = await partOf(lines)));

  test("numbers against numbers, straight and without markers", () => {
    expect(xml).toContain("<c:scatterChart>");
    expect(xml).not.toContain("<c:smooth");
    expect(xml.match(/<c:symbol val="none"\/>/g)).toHaveLength(3);
  });

  test("drawn from their cells", () => {
    const cells = series(xml).map((each) =>
      [...each.matchAll(/<c:f>([^<]*)<\/c:f>/g)].map(([, cell]) => cell),
    );
    expect(cells).toEqual(["B", "C", "D"].map((at) => [`${SHEET}!$A$2:$A$6`, `${SHEET}!$${at}$2:$${at}$6`]));
  });

  test("told apart by dashes", () => {
    const dashes = series(xml).map((each) => /<a:prstDash val="(\w+)"/.exec(each)?.[1]);
    expect(dashes).toEqual([undefined, "dash", "sysDot"]);
  });

  test("limits, formats and titles of the axes", () => {
    const [x, y] = axis(xml, "valAx");
    expect(x).not.toMatch(/<c:(min|max) /);
    expect(x).toContain('formatCode="0"');
    expect(x).toContain("<a:t>Temperature, °C</a:t>");
    expect(y).toMatch(/<c:max val="12"\/>.*<c:min val="0"\/>/);
    expect(y).toContain('formatCode="0.0"');
  });
});

describe("bars", () => {
  test("the first category on top, the values' axis below", async () => {
    const xml = await partOf(bars);
    expect(xml).toContain('<c:barDir val="bar"/><c:grouping val="clustered"/>');
    expect(axis(xml, "catAx")[0]).toContain('<c:orientation val="maxMin"/>');
    expect(axis(xml, "valAx")[0]).toContain('<c:crosses val="max"/>');
    expect(axis(xml, "catAx")[0]).toContain('<c:tickLblSkip val="1"/>');
  });

  test("one series needs no legend, several have one", async () => {
    expect(await partOf(bars)).not.toContain("<c:legend>");
    expect(await partOf(lines)).toContain('<c:legendPos val="b"/>');
    // a gap is not drawn, so it counts for nothing
    expect(await partOf({ ...stages, series: stages.series.slice(0, 2) })).not.toContain("<c:legend>");
  });

  test("stacked end to end; a gap has neither fill nor edge nor a name in the legend", async () => {
    const xml = await partOf(stages);
    expect(xml).toContain('<c:grouping val="stacked"/>');
    expect(xml).toContain('<c:overlap val="100"/>');
    const [gap, dark, light] = series(xml);
    expect(gap).toContain("<c:spPr><a:noFill/><a:ln><a:noFill/></a:ln></c:spPr>");
    expect(gap).not.toContain("Begins");
    expect(dark).toMatch(/<c:v>Work<\/c:v>.*<c:spPr><a:solidFill>/);
    expect(/srgbClr val="(\w+)"/.exec(dark!)?.[1]).not.toBe(/srgbClr val="(\w+)"/.exec(light!)?.[1]);
  });
});

test("its place and its description", async () => {
  const drawing = (await parts(chartSheet)).get("xl/drawings/drawing1.xml")!;
  const corners = [...drawing.matchAll(/<xdr:col>(\d+)<.*?<xdr:row>(\d+)</g)].map(([, c, r]) => [c, r]);
  // the second corner is the one beyond the last cell
  expect(corners.slice(0, 2)).toEqual([
    ["6", "0"],
    ["14", "15"],
  ]);
  expect(drawing).toContain('descr="Pressure rises with temperature; the rating lies above it."');
});

test("each chart keeps its own looks though the sheet before has some, too", async () => {
  const second = { ...chartSheet, name: "Second", charts: [stages] };
  const found = await parts({ ...chartSheet, charts: [bars] }, other, second);
  expect(found.get("xl/charts/chart1.xml")).not.toContain("<a:noFill/><a:ln>");
  expect(found.get("xl/charts/chart2.xml")).toContain("<a:noFill/><a:ln>");
  expect(found.get("xl/charts/chart2.xml")).toContain("'Second'!$A$17:$A$19");
});

test("cells of another sheet, and texts that only look like something else", async () => {
  const xml = await partOf({
    ...lines,
    title: "_x0041_ \u0000 <b>",
    categories: column(0, 1, 5, "O'Neil"),
  });
  expect(xml).toContain("<c:f>'O''Neil'!$A$2:$A$6</c:f>");
  expect(xml).toContain("<a:t>_x0041_ \uFFFD &lt;b&gt;</a:t>");
});

test("pages lie or stand", async () => {
  const found = await parts(chartSheet, other);
  expect(found.get("xl/worksheets/sheet1.xml")).toContain('orientation="landscape"');
  expect(found.get("xl/worksheets/sheet2.xml")).toContain('orientation="portrait"');
});

test("a list by its cells is not bound to the length of a text", async () => {
  const rule: Validation = {
    row: 0,
    column: 2,
    title: "Batch",
    message: "One of the batches.",
    allowBlank: true,
    kind: "list",
    options: ["a, b", "c".repeat(300)],
    from: column(0, 1, 5, "O'Neil"),
  };
  const found = await parts({ ...chartSheet, validations: [rule] });
  expect(found.get("xl/worksheets/sheet1.xml")).toMatch(
    /type="list" sqref="C1"[^>]*><formula1>'O''Neil'!\$A\$2:\$A\$6<\/formula1>/,
  );
});

test("same data, same bytes", async () => {
  const [one, two] = [
    await writeWorkbookFile({ sheets: [chartSheet] }),
    await writeWorkbookFile({ sheets: [chartSheet] }),
  ];
  expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
});

schemaTest(
  "every part keeps to ISO/IEC 29500 transitional, charts and drawings included",
  async () => {
    const file = await writeWorkbookFile({ sheets: [{ ...chartSheet, charts: [lines] }, again] });
    const paths = [...packageParts(file).keys()];
    expect(paths).toEqual(expect.arrayContaining(["xl/charts/chart3.xml", "xl/drawings/drawing2.xml"]));
    expect(await packageProblems(file)).toEqual([]);
  },
  60_000,
);

libreOfficeTest(
  "LibreOffice draws all three from their cells",
  async () => {
    const file = await writeWorkbookFile({ sheets: [chartSheet] });
    const flat = await readFile(await convertBytes(file, "charts.xlsx", "fods"), "utf8");
    const kinds = [...flat.matchAll(/chart:class="chart:(\w+)"/g)].map(([, kind]) => kind);
    expect(kinds).toEqual(expect.arrayContaining(["scatter", "bar"]));
    expect(flat).toContain("<svg:desc>What each part of a bottle costs.</svg:desc>");
    // the numbers it took from the cells: the formulas' results are among what it draws
    expect(flat).toMatch(/chart:values-cell-range-address="[^"]*\.B10:[^"]*\.?B13"/);
  },
  60_000,
);
