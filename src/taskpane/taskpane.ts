/**
 * The pane's page: finds the spreadsheet it stands beside. In the workbench that page has put its grid forward; in
 * Excel it is Office's.
 */
import brut from "../../sample-workbooks/oxlip-hill-brut.json";
import magnums from "../../sample-workbooks/oxlip-hill-magnum-zero.json";
import rose from "../../sample-workbooks/oxlip-hill-rose.json";
import type { Host } from "../hosts/host";
import { loadAhead } from "./ahead";
import { associateCommands, COMMAND_EVENT, type Command } from "./commands";
import { handOverFunctions, officeCame } from "./office";
import { openPane } from "./pane";
import "./taskpane.css";

declare global {
  interface Window {
    /** Set by a page that brings its own spreadsheet. */
    mousseHost?: Promise<Host>;
  }
}

/** After this long without Excel the user is told why; if it comes later, it is connected all the same. */
const PATIENCE_MS = 5_000;

const ALL_THE_SAME = "The figures of the form are right all the same.";
const NO_EXCEL = `No spreadsheet is connected: open this pane from Excel's Home tab to write the plan. ${ALL_THE_SAME}`;
const notLoaded = (why: string) =>
  `Office.js, which Excel's add-ins need, could not be loaded: ${why} No spreadsheet is connected. ${ALL_THE_SAME}`;
const REFUSED = notLoaded(
  "appsforoffice.microsoft.com cannot be reached from here. Once it can, close the pane and open it again.",
);
const SILENT = notLoaded("appsforoffice.microsoft.com has not answered yet.");
const EXCEL_SILENT = `Office.js is loaded, but Excel has not answered yet. No spreadsheet is connected. ${ALL_THE_SAME}`;

async function connectExcel(): Promise<void> {
  const patience = setTimeout(
    () => pane.explain(typeof Office === "undefined" ? SILENT : EXCEL_SILENT),
    PATIENCE_MS,
  );
  // asked for at once, while Office.js is on its way; the form does not wait for it
  const excel = import("../hosts/excel/excel-host");
  excel.catch(() => undefined);
  try {
    if (!(await officeCame())) return pane.explain(REFUSED);
    handOverFunctions();
    associateCommands();
    const { host } = await Office.onReady();
    const { excelHost } = await excel;
    if (host === Office.HostType.Excel) pane.connect(excelHost());
    else pane.explain(NO_EXCEL);
  } finally {
    clearTimeout(patience);
  }
}

const pane = openPane(document.getElementById("pane")!, [brut, rose, magnums]);
window.addEventListener(COMMAND_EVENT, (event) => pane.command((event as CustomEvent<Command>).detail));
const connected = window.mousseHost ? window.mousseHost.then((host) => pane.connect(host)) : connectExcel();
connected.catch((error: unknown) => pane.explain(error instanceof Error ? error.message : NO_EXCEL));

loadAhead();
