/**
 * The local page: an in-page spreadsheet with all functions on the left, the pane as in Excel on the right.
 */
import { LifecycleService, LifecycleStages, LocaleType, mergeLocales, Univer } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { ILayoutService, UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import locale from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import formattingLocale from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import validationLocale from "@univerjs/preset-sheets-data-validation/locales/en-US";
import { UniverSheetsDrawingPreset } from "@univerjs/preset-sheets-drawing";
import drawingLocale from "@univerjs/preset-sheets-drawing/locales/en-US";
import { engineFunctions, type CustomFunction, type FunctionMetadata } from "../hosts/grid/functions";
import { CallBook } from "../hosts/grid/calls";
import { gridHost, type GridHost } from "../hosts/grid/grid-host";
import { writeWorkbookFile } from "../hosts/xlsx/write";
import { frozen } from "../workbook/frozen";
import { showCharts } from "./charts";
import { completeNames } from "./completing";
import { guardEntries } from "./entry";
import { guardRefusals } from "./refusal-message";
import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import "@univerjs/preset-sheets-drawing/lib/index.css";
import "./workbench.css";

const XLSX_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

const message = document.getElementById("message")!;
const valuesOnly = document.getElementById("values") as HTMLInputElement;
const save = document.getElementById("save") as HTMLButtonElement;

/** What the spreadsheet says beside its bar while it calculates; the library has no words for that. */
const CALCULATING = "Calculating";
const PROGRESS = {
  "sheets-formula": {
    progress: {
      analyzing: CALCULATING,
      calculating: CALCULATING,
      "array-analysis": CALCULATING,
      "array-calculation": CALCULATING,
      done: CALCULATING,
    },
  },
};

async function startGrid(): Promise<GridHost> {
  const calls = new CallBook();
  const { functions } = (await (await fetch("functions.json")).json()) as { functions: FunctionMetadata[] };
  const associated = (
    globalThis as { CustomFunctions?: { associated?: ReadonlyMap<string, CustomFunction> } }
  ).CustomFunctions?.associated;
  if (!associated) throw new Error("The functions did not load; reload the page.");

  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: {
      [LocaleType.EN_US]: mergeLocales(locale, validationLocale, formattingLocale, drawingLocale, PROGRESS),
    },
  });
  const presets = [
    UniverSheetsCorePreset({
      container: "grid",
      header: true,
      toolbar: false,
      formula: engineFunctions(functions, associated, calls.note),
    }),
    UniverSheetsDataValidationPreset(),
    UniverSheetsConditionalFormattingPreset(),
    UniverSheetsDrawingPreset(),
  ];
  for (const plugin of presets.flatMap((preset) => preset.plugins)) {
    if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
    else univer.registerPlugin(plugin);
  }
  const api = FUniver.newAPI(univer);
  api.createWorkbook({
    id: "season",
    name: "Season",
    sheets: { notes: { id: "notes", name: "Scratch", rowCount: 100, columnCount: 20 } },
    sheetOrder: ["notes"],
  });
  // for tests, and for whoever likes to look
  (window as { grid?: FUniver }).grid = api;
  const injector = univer.__getInjector();
  // before that the grid is drawn but does not take keys and commands
  await injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
  showCharts(api);
  completeNames(injector);
  guardEntries(injector);
  guardRefusals(injector, api);
  const focusGrid = () => injector.get(ILayoutService).focus();
  window.addEventListener("keydown", (event) => goBetween(event, api, focusGrid), true);
  return gridHost(api, calls);
}

/** The spreadsheet keeps the Tab key to itself, so F6 leads out of it, and back; Shift+F6 leads to the bar above. */
function goBetween(event: KeyboardEvent, api: FUniver, focusGrid: () => void): void {
  if (event.key !== "F6") return;
  event.preventDefault();
  event.stopPropagation();
  if (event.shiftKey) save.focus();
  else if (document.activeElement?.closest("#pane, .bar")) {
    (document.activeElement as HTMLElement).blur();
    api.getActiveWorkbook()?.getActiveSheet().getActiveRange()?.activate();
    // the engine does not take the keys where it believes that it has them
    focusGrid();
  } else document.querySelector<HTMLElement>("#pane select.language")?.focus();
}

async function saveFile(host: GridHost): Promise<void> {
  const { sheets } = host.read();
  const bytes = await writeWorkbookFile({ sheets: valuesOnly.checked ? frozen(sheets) : sheets });
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes as BlobPart], { type: XLSX_TYPE }));
  link.download = "mousse-season.xlsx";
  link.click();
  URL.revokeObjectURL(link.href);
}

window.mousseHost = startGrid();
window.mousseHost.then(
  (host) => {
    save.disabled = false;
    save.addEventListener("click", () => {
      saveFile(host as GridHost).then(
        () => (message.textContent = "Saved as mousse-season.xlsx, with the numbers as they stand."),
        (error: unknown) =>
          (message.textContent = `Not saved. ${error instanceof Error ? error.message : String(error)}`),
      );
    });
  },
  (error: unknown) =>
    (message.textContent = `The spreadsheet did not start. ${error instanceof Error ? error.message : String(error)}`),
);

// sheets live in this page only, so leaving it with sheets that were not saved is asked about
let savedAs = "";
const standing = (host: GridHost) => JSON.stringify(host.read());
window.mousseHost.then(
  (host) => {
    savedAs = standing(host as GridHost);
    save.addEventListener("click", () => (savedAs = standing(host as GridHost)));
    window.addEventListener("beforeunload", (event) => {
      if (standing(host as GridHost) !== savedAs) event.preventDefault();
    });
  },
  () => undefined,
);
