/**
 * Sheets calculated by a spreadsheet engine in WebAssembly: what stands in their cells as JSON on standard input,
 * results on standard output. A process of its own, as the engine is an ES module.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import initialise, { Model } from "@ironcalc/wasm";

const bytes = readFileSync(createRequire(import.meta.url).resolve("@ironcalc/wasm/wasm_bg.wasm"));
await initialise({ module_or_path: bytes });

/** As many digits as a spreadsheet keeps; the engine gives results only as they are shown. */
const ALL_DIGITS = "0.00000000000000E+00";
const NUMBER = 1;

const sheets = JSON.parse(readFileSync(0, "utf8"));
const model = new Model("season", "en", "UTC", "en");
model.pauseEvaluation();
sheets.forEach(({ name }, index) => {
  if (index > 0) model.newSheet();
  model.renameSheet(index, name);
});
sheets.forEach(({ cells }, sheet) => {
  for (const { row, column, input } of cells) model.setUserInput(sheet, row + 1, column + 1, input);
});
model.resumeEvaluation();
model.evaluate();
const results = sheets.map(({ cells }, sheet) =>
  cells.map(({ row, column }) => {
    const area = { sheet, row: row + 1, column: column + 1, width: 1, height: 1 };
    if (model.getCellType(sheet, row + 1, column + 1) === NUMBER) {
      model.updateRangeStyle(area, "num_fmt", ALL_DIGITS);
    }
    return {
      type: model.getCellType(sheet, row + 1, column + 1),
      shown: model.getFormattedCellValue(sheet, row + 1, column + 1),
    };
  }),
);
process.stdout.write(JSON.stringify(results));
