/**
 * The few kinds of row that the notes are made of.
 */
import type { CellStyle } from "../data";
import type { Row } from "../layout";
import { text } from "../plan/rows";

export const NOTES_WIDTHS = [50, 12, 12, 13, 62] as const;
const LAST_COLUMN = NOTES_WIDTHS.length - 1;
const LINE = NOTES_WIDTHS.reduce((sum, width) => sum + width, 0);

export function headed(title: string): Row[] {
  const cells = [text(title, "heading"), ...Array.from({ length: LAST_COLUMN }, () => text("", "heading"))];
  return [{ cells: [] }, { cells }];
}

export const line = (what: string, meaning: string): Row => ({
  cells: [text(what, "label"), text(meaning, "label")],
});

export const wrapped = (content: string, style: CellStyle = "caution"): Row => ({
  cells: [text(content, style)],
  merge: [0, LAST_COLUMN],
  lines: Math.ceil((content.length * 1.05) / LINE),
});
