/**
 * The grid's formula engine without a page.
 */
import { Univer, type IWorkbookData } from "@univerjs/core";
import { FormulaExecutedStateType } from "@univerjs/engine-formula";
import { FUniver } from "@univerjs/core/facade";
import { UniverSheetsConditionalFormattingPlugin } from "@univerjs/sheets-conditional-formatting";
import { UniverSheetsNodeCorePreset } from "@univerjs/preset-sheets-node-core";
import { engineFunctions, type Called } from "../../src/hosts/grid/functions";
import { allFunctions } from "./functions";

export type GridApi = ReturnType<typeof FUniver.newAPI>;

export interface HeadlessGrid {
  readonly api: GridApi;
  /** Resolves when the recalculation that an edit has started is done. */
  settled(): Promise<void>;
  dispose(): void;
}

export async function headlessGrid(
  workbook: Partial<IWorkbookData> = {},
  called?: Called,
): Promise<HeadlessGrid> {
  const { metadata, implementations } = await allFunctions();
  const preset = UniverSheetsNodeCorePreset({ formula: engineFunctions(metadata, implementations, called) });
  const univer = new Univer({ locale: "enUS" as never, locales: { enUS: {} } });
  for (const plugin of preset.plugins) {
    if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
    else univer.registerPlugin(plugin);
  }
  univer.registerPlugin(UniverSheetsConditionalFormattingPlugin);
  const api = FUniver.newAPI(univer);
  api.createWorkbook({ id: "season", name: "Season", ...workbook });
  return {
    api,
    settled: () =>
      new Promise((resolve, reject) => {
        const overdue = setTimeout(() => reject(new Error("the grid did not finish calculating")), 60_000);
        const ended = api.getFormula().calculationEnd((state) => {
          // another takes its place
          if (state === FormulaExecutedStateType.STOP_EXECUTION) return;
          clearTimeout(overdue);
          ended.dispose();
          // the results are applied to the cells right after
          setTimeout(resolve, 50);
        });
      }),
    dispose: () => univer.dispose(),
  };
}
