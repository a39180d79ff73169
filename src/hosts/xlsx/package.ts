/**
 * A workbook file looked at before anything of it is inflated: a small file can be made to fill all memory. What is let
 * through is the same file with a directory of only those parts that are read here.
 */

/** Why a file is not read, in words for whoever opened it: "it is empty". */
export class FileRefusal extends Error {}

const MB = 1_000_000;
/** Two hundred plans are some 140 MB, a sheet of half a million rows is some 40. */
export const LIMITS = { parts: 20_000, part: 50 * MB, all: 250 * MB } as const;

const [DIRECTORY_END, DIRECTORY_ENTRY] = [0x06054b50, 0x02014b50];
const [END_BYTES, ENTRY_BYTES, HEADER_BYTES, LONGEST_REMARK] = [22, 46, 30, 65_535];
/** In place of a number that the older kind of zip has no room for. */
const [FULL_32, FULL_16] = [0xffff_ffff, 0xffff];
const SIZES_FOLLOW = 8;
const OLD_WORKBOOK = 0xd0cf11e0;

/** Pictures, charts, comments, what other workbooks said: not read, so never inflated, however large. */
const UNREAD = new RegExp(
  String.raw`(?:^|/)(?:drawings|charts|media|theme|externalLinks|pivot\w+|slicer\w*|timeline\w*|threadedComments|` +
    String.raw`persons|tables|embeddings|ctrlProps|customXml|docProps|worksheets/_rels)/|` +
    String.raw`(?:^|/)comments[^/]*$|\.(?:bin|png|jpe?g|gif|emf|wmf|vml)$`,
  "i",
);

const DAMAGED = "it is not a whole .xlsx workbook: it is damaged, or something else";

/** The file with only those parts in its directory that are read; or a refusal. */
export function readableParts(file: Uint8Array): Uint8Array {
  if (file.length === 0) throw new FileRefusal("it is empty");
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (file.length > 4 && view.getUint32(0) === OLD_WORKBOOK) {
    throw new FileRefusal(
      "it is an .xls workbook, or has a password: save it as an .xlsx workbook without a password",
    );
  }
  const end = endOfDirectory(view);
  const [count, start] = [view.getUint16(end + 10, true), view.getUint32(end + 16, true)];
  if (count === FULL_16 || start === FULL_32) throw tooLarge("more parts than a workbook has");
  if (count > LIMITS.parts) throw tooLarge(`${count} parts; at most ${LIMITS.parts} are read`);
  return withDirectory(file, partsRead(file, view, start, count));
}

const tooLarge = (what: string) =>
  new FileRefusal(`it holds ${what}. Save the plans in a workbook of their own, and open that`);

function endOfDirectory(view: DataView): number {
  for (
    let at = view.byteLength - END_BYTES;
    at >= Math.max(0, view.byteLength - END_BYTES - LONGEST_REMARK);
    at--
  ) {
    if (view.getUint32(at, true) === DIRECTORY_END) return at;
  }
  throw new FileRefusal(DAMAGED);
}

/** The directory's entries of what is read. */
function partsRead(file: Uint8Array, view: DataView, start: number, count: number): Uint8Array[] {
  const kept: Uint8Array[] = [];
  const names = new Set<string>();
  let [at, all] = [start, 0];
  for (let index = 0; index < count; index++) {
    if (at + ENTRY_BYTES > file.length || view.getUint32(at, true) !== DIRECTORY_ENTRY) {
      throw new FileRefusal(DAMAGED);
    }
    const [packed, size] = [view.getUint32(at + 20, true), view.getUint32(at + 24, true)];
    const nameLength = view.getUint16(at + 28, true);
    const next =
      at + ENTRY_BYTES + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    const name = new TextDecoder().decode(file.subarray(at + ENTRY_BYTES, at + ENTRY_BYTES + nameLength));
    if (names.has(name)) throw new FileRefusal(DAMAGED);
    names.add(name);
    if (!UNREAD.test(name)) {
      // a size that is not said here would be believed elsewhere, or not be bounded at all
      const unsaid =
        (packed === 0 && (view.getUint16(at + 8, true) & SIZES_FOLLOW) !== 0) || (size === 0 && packed > 2);
      if (unsaid || next > file.length || nameAtPart(file, view, at) !== name) throw new FileRefusal(DAMAGED);
      all += size;
      const part = Math.round(size / MB);
      if (size > LIMITS.part)
        throw tooLarge(`a part of ${part} MB, unpacked; at most ${LIMITS.part / MB} MB are read`);
      if (all > LIMITS.all) throw tooLarge(`more than ${LIMITS.all / MB} MB, unpacked; at most that is read`);
      kept.push(file.subarray(at, next));
    }
    at = next;
  }
  return kept;
}

/** What the part itself says its name is. A name damaged in the directory would pass for a part that is not there. */
function nameAtPart(file: Uint8Array, view: DataView, entry: number): string | undefined {
  const at = view.getUint32(entry + 42, true);
  if (at + HEADER_BYTES > file.length) return undefined;
  const name = file.subarray(at + HEADER_BYTES, at + HEADER_BYTES + view.getUint16(at + 26, true));
  return new TextDecoder().decode(name);
}

function withDirectory(file: Uint8Array, entries: readonly Uint8Array[]): Uint8Array {
  const length = entries.reduce((sum, entry) => sum + entry.length, 0);
  const whole = new Uint8Array(file.length + length + END_BYTES);
  whole.set(file);
  let at = file.length;
  for (const entry of entries) {
    whole.set(entry, at);
    at += entry.length;
  }
  const view = new DataView(whole.buffer);
  view.setUint32(at, DIRECTORY_END, true);
  view.setUint16(at + 8, entries.length, true);
  view.setUint16(at + 10, entries.length, true);
  view.setUint32(at + 12, length, true);
  view.setUint32(at + 16, file.length, true);
  return whole;
}
