/**
 * The workbook that the command line writes: whole or not at all, and never over another unless asked.
 */
import {
  constants,
  copyFileSync,
  linkSync,
  mkdtempSync,
  realpathSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { fail, fromHere, kindAt, reasonOf } from "./places";

/** What can be said about the workbook's place before there is one. */
export function refusePlace(workbookFile: string, overwrite: boolean): void {
  if (!workbookFile.toLowerCase().endsWith(".xlsx"))
    fail(`${workbookFile} does not end in .xlsx; give the name of the workbook to write.`);
  const [folder, name] = [path.dirname(workbookFile), path.basename(workbookFile)];
  const kind = kindAt(folder);
  if (kind === "nothing")
    fail(`The folder ${folder} is not there; make it first, or write ${name} elsewhere.`);
  if (kind === "file") fail(`${folder} is a file, not a folder; write ${name} elsewhere.`);
  const there = kindAt(workbookFile);
  if (there === "folder") fail(`${workbookFile} is a folder; give another name.`);
  if (there === "file" && !overwrite)
    fail(`${workbookFile} is there already; give another name, or add --overwrite.`);
}

/** Some disks know no links; there the copy is refused where the name is taken. */
function moveToFree(draft: string, file: string): void {
  try {
    linkSync(draft, file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") throw error;
    copyFileSync(draft, file, constants.COPYFILE_EXCL);
  }
}

/** Written beside its place and moved, so that a failure half-way leaves what was there. */
export function writeWhole(workbookFile: string, bytes: Uint8Array, overwrite: boolean): void {
  const named = fromHere(workbookFile);
  let room: string | undefined;
  try {
    // what a link leads to is written, not the link
    const file = kindAt(workbookFile) === "file" ? realpathSync(named) : named;
    room = mkdtempSync(path.join(path.dirname(file), ".mousse-"));
    const draft = path.join(room, "draft");
    writeFileSync(draft, bytes);
    // a link is refused where the name is taken meanwhile, a move would not be
    if (overwrite) renameSync(draft, file);
    else moveToFree(draft, file);
  } catch (error) {
    const kept = overwrite ? " What was there is as it was." : "";
    fail(`${workbookFile} cannot be written: ${reasonOf(error)}.${kept}`);
  } finally {
    if (room !== undefined) rmSync(room, { recursive: true, force: true });
  }
}
