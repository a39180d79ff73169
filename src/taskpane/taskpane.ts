/**
 * The pane's page: finds the spreadsheet it stands beside. In the workbench that page has put its grid forward; in
 * Excel it is Office's.
 */
import brut from "../../sample-workbooks/oxlip-hill-brut.json";
import magnums from "../../sample-workbooks/oxlip-hill-magnum-zero.json";
import rose from "../../sample-workbooks/oxlip-hill-rose.json";
import { excelHost } from "../hosts/excel/excel-host";
import type { Host } from "../hosts/host";
import { openPane } from "./pane";
import "./taskpane.css";

declare global {
  interface Window {
    /** Set by a page that brings its own spreadsheet. */
    mousseHost?: Promise<Host>;
  }
}

/** office.js never answers where it could not load, so waiting has an end. */
const OFFICE_TIMEOUT_MS = 10_000;

const NO_EXCEL =
  "No spreadsheet is connected: open this pane from Excel's Home tab to write the plan. The figures above are right all the same.";

async function findHost(): Promise<Host | null> {
  if (window.mousseHost) return window.mousseHost;
  if (typeof Office === "undefined") return null;
  const late = new Promise<null>((resolve) => setTimeout(() => resolve(null), OFFICE_TIMEOUT_MS));
  const ready = Office.onReady().then(({ host }) => (host === Office.HostType.Excel ? excelHost() : null));
  return Promise.race([ready, late]);
}

const pane = openPane(document.getElementById("pane")!, [brut, rose, magnums]);
findHost().then(
  (host) => (host ? pane.connect(host) : pane.explain(NO_EXCEL)),
  (error: unknown) => pane.explain(error instanceof Error ? error.message : NO_EXCEL),
);
