/**
 * The spreadsheet engine of src/commandline/engine.mjs, kept in this process: it takes most of its time to begin with,
 * and thousands of changes are calculated one after the other.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import initialise, { Model } from "@ironcalc/wasm";

const ALL_DIGITS = "0.00000000000000E+00";
const NUMBER = 1;
const BOOLEAN = 4;
const ERROR = 16;

export async function startEngine() {
  const file = createRequire(import.meta.url).resolve("@ironcalc/wasm/wasm_bg.wasm");
  await initialise({ module_or_path: readFileSync(file) });
  return calculate;
}

/** The results of every cell, as `calculate` of src/commandline/engine.ts gives them. */
function calculate(sheets) {
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
      cells.map(({ row, column, input }) =>
        input.startsWith("=") ? resultOf(model, sheet, row + 1, column + 1) : asTyped(input),
      ),
    );
  } finally {
    model.free();
  }
}

/** What was typed shows as it is. */
function asTyped(input) {
  if (input.startsWith("'")) return { value: input.slice(1) };
  return { value: input === "TRUE" || input === "FALSE" ? input === "TRUE" : Number(input) };
}

function resultOf(model, sheet, row, column) {
  const type = model.getCellType(sheet, row, column);
  if (type === NUMBER)
    model.updateRangeStyle({ sheet, row, column, width: 1, height: 1 }, "num_fmt", ALL_DIGITS);
  const shown = model.getFormattedCellValue(sheet, row, column);
  if (type === ERROR) return { error: shown };
  if (shown === "") return { value: null };
  if (type === NUMBER) return { value: Number(shown) };
  return { value: type === BOOLEAN ? shown === "TRUE" : shown };
}
