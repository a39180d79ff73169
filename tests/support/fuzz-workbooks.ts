/**
 * Workbook files taken apart and put together again wrongly.
 */
import { strFromU8, strToU8, unzipSync, zipSync, type Zippable } from "fflate";
import { constants, deflateRawSync } from "node:zlib";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { planBatch } from "../../src/cellar/batch/plan";
import { planSheet } from "../../src/workbook/plan/sheet";
import { sampleInputs } from "./samples";

export const WORKBOOK = "xl/workbook.xml";
export const SHEET = "xl/worksheets/sheet1.xml";
export const STRINGS = "xl/sharedStrings.xml";

export type Parts = Readonly<Record<string, Uint8Array>>;

export async function planFile(): Promise<Uint8Array> {
  const inputs = sampleInputs("oxlip-hill-brut.json");
  return writeWorkbookFile({ sheets: [planSheet(inputs, planBatch(inputs), [])] });
}

export const partsOf = (file: Uint8Array): Parts => unzipSync(file);
export const zipped = (parts: Zippable) => zipSync(parts, { level: 6 });

/** The file with some parts' XML changed. */
export function withXml(parts: Parts, edits: Readonly<Record<string, (xml: string) => string>>): Uint8Array {
  const changed: Record<string, Uint8Array> = { ...parts };
  for (const [path, edit] of Object.entries(edits)) changed[path] = strToU8(edit(strFromU8(parts[path]!)));
  return zipped(changed);
}

/** What a name stands for, put in place of what it stood for. */
export const renaming = (name: string, reference: string | undefined) => (xml: string) =>
  xml.replace(new RegExp(`(<definedName name="${name}"[^>]*>)[^<]*(</definedName>)`), (_, head, tail) =>
    reference === undefined ? "" : `${String(head)}${reference}${String(tail)}`,
  );

/** Another content for the cell at an address, whatever it held. */
export const recelled = (address: string, cell: string) => (xml: string) =>
  xml.replace(new RegExp(`<c r="${address}"[^>]*?(?:/>|>.*?</c>)`), () => cell);

/** Where a name leads. */
export function addressOf(parts: Parts, name: string): string {
  const [, reference = ""] =
    new RegExp(`<definedName name="${name}"[^>]*>([^<]*)<`).exec(strFromU8(parts[WORKBOOK]!)) ?? [];
  return reference.replace(/^.*!/, "").replaceAll("$", "");
}

/** The directory's entry of a part, to change what it says of its size: [packed, unpacked]. */
export function lying(
  file: Uint8Array,
  path: string,
  change: (view: DataView, at: number) => void,
): Uint8Array {
  const copy = file.slice();
  const view = new DataView(copy.buffer);
  const name = strToU8(path);
  for (let at = 0; at + 46 + name.length <= copy.length; at++) {
    const isEntry = view.getUint32(at, true) === 0x02014b50 && view.getUint16(at + 28, true) === name.length;
    if (isEntry && name.every((byte, index) => copy[at + 46 + index] === byte)) change(view, at);
  }
  return copy;
}

const MB = 1_000_000;
const BLANKS = deflateRawSync(new Uint8Array(MB).fill(32), { finishFlush: constants.Z_FULL_FLUSH });
/** The empty block that ends a packed part. */
const END = Uint8Array.of(3, 0);

/** A file with parts of so many MB of blanks each, which are nowhere unpacked here. */
export function inflating(parts: Parts, megabytes: Readonly<Record<string, number>>): Uint8Array {
  const packed = Object.entries(megabytes).map(
    ([path, size]) =>
      [path, [Buffer.concat([...Array<Uint8Array>(size).fill(BLANKS), END]), { level: 0 }]] as const,
  );
  const stored = zipSync({ ...parts, ...Object.fromEntries(packed) } as Zippable, { level: 1 });
  return Object.entries(megabytes).reduce(
    (file, [path, size]) =>
      lying(file, path, (view, at) => {
        view.setUint16(at + 10, 8, true);
        view.setUint32(at + 16, 0, true);
        view.setUint32(at + 24, size * MB, true);
      }),
    stored,
  );
}
