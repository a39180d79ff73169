/**
 * How long LibreOffice takes to work out every formula of an open workbook: a macro of its own Basic calls its hard
 * recalculation and reads its clock, so that starting, opening and saving do not count.
 */
import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { soffice } from "../support/libreoffice";

const TIMEOUT_MS = 300_000;

const LIBRARY = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE library:library PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "library.dtd">
<library:library xmlns:library="http://openoffice.org/2000/library" library:name="Standard" library:readonly="false"
 library:passwordprotected="false"><library:element library:name="Measure"/></library:library>`;

const module = (rounds: number) => `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">
<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Measure" script:language="StarBasic">
Sub Recalculate(book As String, results As String)
  Dim hidden(0) As New com.sun.star.beans.PropertyValue
  hidden(0).Name = "Hidden"
  hidden(0).Value = True
  opened = StarDesktop.loadComponentFromURL(book, "_blank", 0, hidden())
  out = FreeFile
  Open results For Output As #out
  For round = 1 To ${rounds}
    started = GetSystemTicks()
    opened.calculateAll()
    Print #out, GetSystemTicks() - started
  Next
  Close #out
  opened.close(True)
  StarDesktop.terminate()
End Sub
</script:module>`;

/** Seconds of each round. */
export async function recalculations(workbook: Uint8Array, rounds: number): Promise<number[]> {
  if (!soffice) throw new Error("LibreOffice is missing: there is no soffice on the PATH.");
  const folder = await mkdtemp(path.join(tmpdir(), "recalculation-"));
  const start = (...args: string[]) =>
    promisify(execFile)(
      soffice!,
      [`-env:UserInstallation=${pathToFileURL(path.join(folder, "profile")).href}`, "--headless", ...args],
      { timeout: TIMEOUT_MS },
    );
  try {
    // the first start makes the profile, and would replace a library that was there
    await start("--terminate_after_init");
    const standard = path.join(folder, "profile/user/basic/Standard");
    await writeFile(path.join(standard, "script.xlb"), LIBRARY);
    await writeFile(path.join(standard, "Measure.xba"), module(rounds));
    const [book, results] = [path.join(folder, "book.xlsx"), path.join(folder, "results.txt")];
    await writeFile(book, workbook);
    await start(`macro:///Standard.Measure.Recalculate("${pathToFileURL(book).href}","${results}")`);
    const found = (await readFile(results, "utf8")).trim().split(/\s+/).map(Number);
    if (found.length !== rounds || !found.every((ms) => ms > 0))
      throw new Error(`LibreOffice told ${found.join(" ")} instead of ${rounds} times`);
    return found.map((ms) => ms / 1000);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
