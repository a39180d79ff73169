/**
 * The selected cell in Excel, on the genuine Excel proxies: what it holds, a formula put into it, and being told of
 * each that is selected.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import type { CellFormula } from "../../src/hosts/host";
import { standInWorkbook, type GivenSheet, type StandInOptions } from "../support/excel-proxies";
import { everything, operationsOf } from "../support/excel-writing";

const NAME = "Plan · Jo's";
const sheets: readonly GivenSheet[] = [
  {
    name: NAME,
    cells: {
      B1: { value: 12.5 },
      B2: { value: 25, formula: "=B1*2" },
      B3: { value: "=1+1" },
      B4: { value: true },
      B5: { value: "#N/A", formula: "=MOUSSE.TIRAGE.SUGAR(-1, 24)", error: true },
    },
  },
  { name: "Season", cells: { A1: { value: "Oxlip Hill" } } },
];
const opened = (selected: { sheet: string; address: string }, options: StandInOptions = {}) => {
  const workbook = standInWorkbook({ sheets, ...options });
  workbook.selected = selected;
  return { workbook, host: excelHost(everything) };
};

test.each([
  [NAME, "B1", "12.5"],
  [NAME, "B2", "=B1*2"],
  [NAME, "B3", "=1+1"],
  [NAME, "C9", ""],
  ["Season", "A1", "Oxlip Hill"],
])("%s %s holds %j", async (sheet, address, content) => {
  const { workbook, host } = opened({ sheet, address });
  expect(await host.selectedCell()).toEqual({ sheet, address, content });
  expect(workbook.roundTrips).toHaveLength(1);
});

test("nothing that is a cell is selected", async () => {
  const { host } = opened({ sheet: "a chart", address: "A1" });
  await expect(host.selectedCell()).rejects.toThrow("no cell is selected");
});

describe("a formula put in", () => {
  test.each(["B1", "B2", "B4", "C9"])("into %s, as it was looked at, and into no other", async (address) => {
    const { workbook, host } = opened({ sheet: NAME, address });
    const before = new Map(workbook.sheets[0]!.cells);
    await host.typeFormula(await host.selectedCell(), "=MOUSSE.SUGAR.BRIX(200)");
    const key = `${Number(address.slice(1)) - 1} ${address.charCodeAt(0) - 65}`;
    expect(workbook.sheets[0]!.cells.get(key)?.formula).toBe("=MOUSSE.SUGAR.BRIX(200)");
    const others = [...workbook.sheets[0]!.cells].filter(([each]) => each !== key);
    expect(others).toEqual([...before].filter(([each]) => each !== key));
    expect(operationsOf(workbook).map(({ on, name }) => `${on} ${name}`)).toContain(
      `GetRange(${address}) Formulas`,
    );
  });

  test("not where the cell holds something else by then", async () => {
    const { workbook, host } = opened({ sheet: NAME, address: "B1" });
    const cell = await host.selectedCell();
    workbook.sheets[0]!.cells.set("0 1", { value: 13 });
    await expect(host.typeFormula(cell, "=1")).rejects.toThrow(
      `B1 of "${NAME}" has changed meanwhile, so nothing was put in: try again.`,
    );
    expect(workbook.sheets[0]!.cells.get("0 1")).toEqual({ value: 13 });
  });

  test("not where the sheet is gone, and that is said", async () => {
    const { workbook, host } = opened({ sheet: NAME, address: "B1" });
    const cell = await host.selectedCell();
    workbook.sheets.shift();
    await expect(host.typeFormula(cell, "=1")).rejects.toThrow(`There is no sheet named "${NAME}" any more.`);
    expect(operationsOf(workbook)).toEqual([]);
  });

  test("what Excel refuses reaches the caller", async () => {
    const { host } = opened({ sheet: NAME, address: "B1" }, { refuses: ({ name }) => name === "Formulas" });
    await expect(host.typeFormula(await host.selectedCell(), "=1(")).rejects.toThrow("refuses");
  });
});

describe("told of each cell that is selected", () => {
  const settled = () => new Promise((resolve) => setTimeout(resolve, 20));
  const watching = async (options: StandInOptions = {}) => {
    const { workbook, host } = opened({ sheet: NAME, address: "B1" }, options);
    const told: CellFormula[] = [];
    host.watchSelection!((cell) => told.push(cell as CellFormula));
    await settled();
    const select = (address: string, sheet = NAME) => {
      workbook.selected = { sheet, address };
      for (const watcher of workbook.watchers) watcher();
    };
    return { workbook, told, select };
  };
  const shown = (cells: readonly CellFormula[]) =>
    cells.map(({ address, formula, failed }) => [address, formula, failed]);

  test("the one that is selected at the start, at once", async () => {
    const { workbook, told } = await watching();
    expect(shown(told)).toEqual([["B1", "", false]]);
    expect(workbook.watchers).toHaveLength(1);
  });

  test("a formula as it is, a text that begins like one as none, an error as one", async () => {
    const { told, select } = await watching();
    for (const address of ["B2", "B3", "B5", "C9"]) {
      select(address);
      await settled();
    }
    expect(shown(told.slice(1))).toEqual([
      ["B2", "=B1*2", false],
      ["B3", "", false],
      ["B5", "=MOUSSE.TIRAGE.SUGAR(-1, 24)", true],
      ["C9", "", false],
    ]);
  });

  test("only of the last when someone moves fast", async () => {
    const { told, select } = await watching();
    for (const address of ["B2", "B3", "B4", "B5"]) select(address);
    await settled();
    expect(shown(told.slice(1)).map(([address]) => address)).toEqual(["B5"]);
  });

  test("a cell that cannot be read is no news, and the next one is", async () => {
    const { told, select } = await watching();
    select("A1", "a chart");
    await settled();
    expect(told).toHaveLength(1);
    select("B2");
    await settled();
    expect(shown(told.slice(1))).toEqual([["B2", "=B1*2", false]]);
  });

  test("nor is the first, and nothing is thrown that nobody catches", async () => {
    const thrown: unknown[] = [];
    const note = (reason: unknown) => void thrown.push(reason);
    process.on("unhandledRejection", note);
    const { told, select } = await watching({ failures: [{ roundTrip: 2 }] });
    process.off("unhandledRejection", note);
    expect([told, thrown]).toEqual([[], []]);
    select("B2");
    await settled();
    expect(shown(told)).toEqual([["B2", "=B1*2", false]]);
  });

  test("where Excel does not take the watcher, nobody is told and nothing is thrown", async () => {
    const { workbook, told } = await watching({ failures: [{ roundTrip: 1 }] });
    expect(told).toEqual([]);
    expect(workbook.watchers).toEqual([]);
  });

  test("what stands in cells that its formula names, as of its own sheet", async () => {
    const { told, select } = await watching();
    select("B2");
    await settled();
    expect(await told.at(-1)!.valuesOf(["B1", "Season!A1"])).toEqual([[[12.5]], [["Oxlip Hill"]]]);
  });
});
