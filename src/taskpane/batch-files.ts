/**
 * Batch files in and out of the form.
 */
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
  if (file.size > LARGEST_KB * 1000) {
    return {
      said: `${file.name} is not a batch file: it has more than ${LARGEST_KB} kB. The form is as it was.`,
    };
  }
  let batch: unknown;
  try {
    batch = JSON.parse(await file.text());
  } catch {
    return { said: `${file.name} is not a batch file: it is not JSON. The form is as it was.` };
  }
  if (isDeep(batch)) {
    return { said: `${file.name} is not a batch file: it is nested too deep. The form is as it was.` };
  }
  if (!looksLikeBatch(batch)) {
    return {
      said: `${file.name} is not a batch file: it has none of a batch's sections. The form is as it was.`,
    };
  }
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
