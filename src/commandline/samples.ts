/**
 * npm run samples: the workbooks in sample-workbooks, from the batch files beside them. The same bytes every time.
 */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { writeWorkbookFile } from "../hosts/xlsx/write";
import { batchFiles, readBatches } from "./files";
import { sampleBooks } from "./sample-books";

async function main(): Promise<void> {
  const folder = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../../sample-workbooks");
  const files = batchFiles(folder);
  for (const [name, sheets] of sampleBooks(files, readBatches(files))) {
    writeFileSync(path.join(folder, name), await writeWorkbookFile({ sheets }));
    console.log(`Wrote ${name}: ${sheets.length} sheets.`);
  }
}

void main();
