/**
 * A spreadsheet engine in WebAssembly: from what stands in the cells of sheets to what they show.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import initialise, { Model } from "@ironcalc/wasm";

/** As many digits as a spreadsheet keeps; the engine gives results only as they are shown. */
const ALL_DIGITS = "0.00000000000000E+00";
const NUMBER = 1;

/** Starting takes longer than calculating: what calculates afterwards can be called again and again. */
export async function startEngine() {
  const bytes = readFileSync(createRequire(import.meta.url).resolve("@ironcalc/wasm/wasm_bg.wasm"));
  await initialise({ module_or_path: bytes });
  return calculated;
}

/** The type of each cell and what it shows, sheet by sheet in the order given. */
function calculated(sheets) {
  const model = new Model("season", "en", "UTC", "en");
  try {
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
    return sheets.map(({ cells }, sheet) =>
      cells.map(({ row, column }) => shownIn(model, sheet, row + 1, column + 1)),
    );
  } finally {
    model.free();
  }
}

function shownIn(model, sheet, row, column) {
  const type = model.getCellType(sheet, row, column);
  if (type === NUMBER)
    model.updateRangeStyle({ sheet, row, column, width: 1, height: 1 }, "num_fmt", ALL_DIGITS);
  return { type, shown: model.getFormattedCellValue(sheet, row, column) };
}
