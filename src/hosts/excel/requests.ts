/**
 * What is queued goes to Excel in one request, unless that would be more than Excel on the web takes. The limit
 * there is 5 MB (learn.microsoft.com, "Resource limits and performance optimization for Office Add-ins"); two
 * hundred plans stay below it, so for them nothing is split.
 */
import type { PlacedCell, SheetData } from "../../workbook/data";
import { rectangles } from "./areas";

const MOST_BYTES = 4_700_000;

export class Requests {
  #bytes = 0;
  /** How many requests Excel has answered. */
  sent = 0;

  /** `first` is queued at the beginning of each request. `signal`: whether another is to be sent. */
  constructor(
    private readonly context: Excel.RequestContext,
    private readonly first: () => void = () => undefined,
    private readonly signal?: AbortSignal,
  ) {}

  /** To be asked before something of this size is queued. */
  async makeRoom(bytes: number): Promise<void> {
    if (this.#bytes > 0 && this.#bytes + bytes > MOST_BYTES) await this.send();
    if (this.#bytes === 0) this.first();
    this.#bytes += bytes;
  }

  async send(): Promise<void> {
    this.signal?.throwIfAborted();
    await this.context.sync();
    this.sent++;
    this.#bytes = 0;
  }
}

// Rather too much than too little: measured on plans, where the tests hold them against what is really sent.
const BYTES = {
  sheet: 3_000,
  cell: 45,
  block: 380,
  name: 260,
  rule: 800,
  highlight: 2_400,
  note: 420,
  chart: 5_500,
  series: 1_800,
};

/** To add a sheet or copy one, and to rename it. */
export const ADDING_BYTES = 1_500;

export function writingBytes({ cells, names, validations, highlights }: SheetData): number {
  const looks = BYTES.cell * cells.length;
  const rest =
    BYTES.name * names.length + BYTES.rule * validations.length + BYTES.highlight * highlights.length;
  return BYTES.sheet + contentBytes(cells) + looks + rest;
}

export function differenceBytes(cells: readonly PlacedCell[], rules: readonly unknown[]): number {
  const blocks = BYTES.block * rectangles(cells).length + BYTES.rule * rules.length;
  return contentBytes(cells) + BYTES.cell * cells.length + blocks;
}

export const chartBytes = ({ charts }: SheetData) =>
  charts.reduce((sum, { series }) => sum + BYTES.chart + BYTES.series * series.length, 0);

export const noteBytes = ({ cells }: SheetData) =>
  cells.reduce((sum, { note }) => sum + (note === undefined ? 0 : BYTES.note + textBytes(note)), 0);

export const PAGE_BYTES = 1_200;
export const NOTE_BYTES = BYTES.note;
export const TABLE_BYTES = 1_500;

const textBytes = (text: string) => JSON.stringify(text).length;

const contentBytes = (cells: readonly PlacedCell[]) =>
  cells.reduce((sum, { formula, value }) => sum + JSON.stringify(formula ?? value).length, 0);
