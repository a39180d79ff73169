/**
 * Cells that stand out by a word, to the grid's terms and back.
 */
import type { Highlight } from "../../workbook/data";
import { highlightLooks } from "../../workbook/styles";

const TRUE = 1;

/** As far as we write such rules. */
export interface GridHighlight {
  readonly cfId: string;
  readonly ranges: readonly {
    readonly startRow: number;
    readonly endRow: number;
    readonly startColumn: number;
    readonly endColumn: number;
  }[];
  readonly stopIfTrue: boolean;
  readonly rule: {
    readonly type: string;
    readonly subType?: string;
    readonly operator?: string;
    readonly value?: unknown;
    readonly style?: object;
  };
}

export function highlightToGrid({ word, look, cells }: Highlight, cfId: string): GridHighlight {
  const { color, fill } = highlightLooks[look];
  return {
    cfId,
    ranges: cells.map(({ row, column }) => ({
      startRow: row,
      endRow: row,
      startColumn: column,
      endColumn: column,
    })),
    stopIfTrue: false,
    rule: {
      type: "highlightCell",
      subType: "text",
      operator: "equal",
      value: word,
      style: { bl: TRUE, cl: { rgb: `#${color}` }, bg: { rgb: `#${fill}` } },
    },
  };
}

/** Of our own kind only; any other is left behind. */
export function highlightFromGrid({ ranges, rule }: GridHighlight): Highlight[] {
  const { type, subType, operator, value, style } = rule;
  if (type !== "highlightCell" || subType !== "text" || operator !== "equal") return [];
  const fill = (style as { bg?: { rgb?: string } } | undefined)?.bg?.rgb;
  const look = LOOKS.find((each) => `#${highlightLooks[each].fill}` === fill);
  if (look === undefined || typeof value !== "string") return [];
  const cells = ranges.flatMap(({ startRow, endRow, startColumn, endColumn }) =>
    span(startRow, endRow).flatMap((row) => span(startColumn, endColumn).map((column) => ({ row, column }))),
  );
  return [{ word: value, look, cells }];
}

const LOOKS = Object.keys(highlightLooks) as (keyof typeof highlightLooks)[];
const span = (first: number, last: number) =>
  Array.from({ length: last - first + 1 }, (_, index) => first + index);
