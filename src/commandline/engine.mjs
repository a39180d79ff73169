/**
 * Sheets calculated in a process of its own, as the engine is an ES module: what stands in their cells as JSON on
 * standard input, results on standard output.
 */
import { readFileSync } from "node:fs";
import { startEngine } from "./engine-sheets.mjs";

const calculated = await startEngine();
process.stdout.write(JSON.stringify(calculated(JSON.parse(readFileSync(0, "utf8")))));
