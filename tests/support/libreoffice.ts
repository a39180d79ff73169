/**
 * LibreOffice without a window, as a second program that opens what was written.
 */
import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, delimiter, extname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";

const candidates = [
  ...(process.env.PATH ?? "")
    .split(delimiter)
    .flatMap((folder) => [join(folder, "soffice"), join(folder, "soffice.exe")]),
  "/Applications/LibreOffice.app/Contents/MacOS/soffice",
  "C:/Program Files/LibreOffice/program/soffice.exe",
];

export const soffice = candidates.find((path) => existsSync(path));
if (!soffice) {
  process.stderr.write("LibreOffice tests need the program soffice on the PATH: install LibreOffice Calc\n");
}

/** A test that needs LibreOffice: skipped where it is missing, but not in CI, where it fails. */
export const libreOfficeTest = soffice || process.env.CI ? test : test.skip;

const folders: string[] = [];

/** Deletes everything that was converted; for afterAll. */
export async function removeConversions(): Promise<void> {
  await Promise.all(folders.splice(0).map((folder) => rm(folder, { recursive: true, force: true })));
}

/** Whether formulas are calculated on loading: 0 always, 1 never, which keeps the cached values. */
const profile = (recalcMode: 0 | 1) => `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse">
<value>${recalcMode}</value></prop></item></oor:items>`;

/**
 * Opens a file and saves it in another format: "csv", "fods", or with filter options as for --convert-to.
 * Gives the path of the result, in a folder of its own outside the project.
 */
export async function convert(file: string, format: string, { recalculate = false } = {}): Promise<string> {
  if (!soffice) throw new Error("LibreOffice is missing: there is no soffice on the PATH.");
  const folder = await mkdtemp(join(tmpdir(), "libreoffice-"));
  folders.push(folder);
  // a private profile, or a LibreOffice that is open would take the job and its settings would count
  const settings = join(folder, "profile");
  await mkdir(join(settings, "user"), { recursive: true });
  await writeFile(join(settings, "user/registrymodifications.xcu"), profile(recalculate ? 0 : 1));
  const environment = `-env:UserInstallation=${pathToFileURL(settings).href}`;
  const args = [environment, "--headless", "--convert-to", format, "--outdir", folder, file];
  const { stdout, stderr } = await promisify(execFile)(soffice, args, { timeout: 120_000 });

  const [extension] = format.split(":");
  const result = join(folder, `${basename(file, extname(file))}.${extension}`);
  // it ends with success even when it could not open the file
  if (!existsSync(result)) throw new Error(`LibreOffice made no ${format} of ${file}: ${stdout}${stderr}`);
  return result;
}

/** The same for a file that exists only in memory; `name` with its ending tells LibreOffice what it is. */
export async function convertBytes(
  bytes: Uint8Array,
  name: string,
  format: string,
  options = {},
): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), "written-"));
  folders.push(folder);
  await writeFile(join(folder, name), bytes);
  return convert(join(folder, name), format, options);
}
