/**
 * How each kind of cell looks, once for every host. Nothing relies on colour alone: inputs are also boxed, results
 * are plain, verdicts are words.
 */
import type { CellStyle, HighlightLook } from "./data";

export interface Look {
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** Points. */
  readonly size?: number;
  /** RRGGBB. */
  readonly color?: string;
  readonly fill?: string;
  readonly border?: "box" | "below" | "above";
  readonly align?: "left" | "right" | "center";
  readonly wrap?: boolean;
  /** Set a little away from the cell to the left; such cells are aligned left. */
  readonly indent?: boolean;
}

/** On every machine that opens these sheets, or with a twin of the same widths. */
export const FONT = "Arial";
export const FONT_SIZE = 10;
/** On all four sides of a printed page, inches. */
export const MARGIN_INCHES = 0.4;
export const BORDER_COLOR = "8C8C8C";

const INK = "1F1F1F";
const QUIET = "595959";

/** Of cells that stand out; the word in them is enough for who sees no colour. */
export const highlightLooks: Readonly<
  Record<HighlightLook, { readonly color: string; readonly fill: string }>
> = {
  bad: { color: "7A1010", fill: "F6CFCB" },
  doubtful: { color: "5A4300", fill: "FBE7BD" },
};

export const looks: Readonly<Record<CellStyle, Look>> = {
  title: { bold: true, size: 16, color: INK },
  subtitle: { size: 10, color: QUIET },
  heading: { bold: true, size: 12, color: INK, fill: "E4E9E2", border: "below" },
  columnHead: { bold: true, color: INK, border: "below", wrap: true },
  indentedHead: { bold: true, color: INK, border: "below", align: "left", indent: true },
  numberHead: { bold: true, color: INK, border: "below", wrap: true, align: "right" },
  label: { color: INK },
  unit: { color: QUIET, align: "left", indent: true },
  note: { color: QUIET, italic: true },
  input: { color: INK, fill: "FFF6DC", border: "box" },
  result: { color: INK, align: "right" },
  total: { bold: true, color: INK, border: "above" },
  totalWord: { bold: true, color: INK, border: "above", align: "left", indent: true },
  key: { bold: true, size: 11, color: INK, align: "right" },
  verdict: { bold: true, color: INK, align: "left", indent: true },
  caution: { color: INK, wrap: true },
};
