/**
 * A batch file or a workbook that the user opens: what it holds goes into the form.
 */
import { readBatchFile } from "./batch-files";
import { element } from "./dom";
import { planChoices } from "./plans";
import { lacking } from "./sheet-errands";

type Say = (...said: (Node | string)[]) => void;
type Into = (batch: unknown, said: string) => void;

export function fileOpener(say: Say, into: Into): HTMLInputElement {
  const input = element("input", {
    type: "file",
    accept: ".json,.xlsx",
    id: "batch-file",
    class: "visually-hidden",
  });
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file) void open(file);
  });

  /** Counts the files: one that was overtaken by another is not put in. */
  let latest = 0;

  async function open(file: File): Promise<void> {
    const mine = ++latest;
    input.value = "";
    if (/\.xlsx$/i.test(file.name)) return openWorkbook(file, mine);
    const { batch, said } = await readBatchFile(file);
    if (mine !== latest) return;
    if (batch === undefined) say(said);
    else into(batch, `${said} `);
  }

  /** The plans of a workbook, whichever program saved it: one goes into the form, of several one is chosen. */
  async function openWorkbook(file: File, mine: number): Promise<void> {
    try {
      const { plansInFile } = await import("./workbook-actions");
      const found = await plansInFile(new Uint8Array(await file.arrayBuffer()));
      if (mine !== latest) return;
      const take = ({ name, batch, unread }: (typeof found)[number]) =>
        into(
          batch,
          `Read from “${name}” of ${file.name}.${lacking(unread)} Write it as a plan of this workbook. `,
        );
      const [only, ...more] = found;
      if (only && more.length === 0) take(only);
      else say(...planChoices(file.name, found, take));
    } catch (error) {
      say(`${file.name} was not read: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  return input;
}
