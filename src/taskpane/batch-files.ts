/**
 * Batch files in and out of the form.
 */
import { batchFileContent } from "../cellar/batch/file-text";
import { element } from "./dom";
import { isDeep, looksLikeBatch, withoutPlace } from "./planned";

export interface FileRead {
  /** What the file holds, or nothing where it is no batch file. */
  readonly batch?: unknown;
  readonly said: string;
}

/** A batch file has some 5 000 bytes. */
const LARGEST_KB = 1000;

export async function readBatchFile(file: File): Promise<FileRead> {
  const refused = (fault: string) => ({
    said: `${file.name} is not a batch file: ${fault}. The form is as it was.`,
  });
  if (file.size > LARGEST_KB * 1000) return refused(`it has more than ${LARGEST_KB} kB`);
  let bytes: ArrayBuffer;
  try {
    bytes = await file.arrayBuffer();
  } catch {
    return refused("it cannot be read");
  }
  const read = batchFileContent(new Uint8Array(bytes));
  if ("fault" in read) return refused(read.fault);
  const batch = read.content;
  if (isDeep(batch)) return refused("it is nested too deep");
  if (!looksLikeBatch(batch)) return refused("it has none of a batch's sections");
  const left = withoutPlace(batch);
  const notTaken = left.length === 0 ? "" : ` Not taken, as there are no such fields: ${left.join(", ")}.`;
  return { batch, said: `Opened ${file.name}.${notTaken}` };
}

/** The form as a batch file, to be opened again another day or given to the command line. */
export function keepBatchFile(batch: unknown): string {
  const content = JSON.stringify(batch, null, 2);
  const link = element("a", {
    download: "batch.json",
    href: URL.createObjectURL(new Blob([content], { type: "application/json" })),
  });
  link.click();
  URL.revokeObjectURL(link.href);
  return "Kept as batch.json, as the form stands.";
}
