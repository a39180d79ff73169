/**
 * Looks as the file stores them.
 */
import type { CellStyle as FileStyle } from "hucre/xlsx";
import type { CellStyle } from "../../workbook/data";
import { BORDER_COLOR, FONT, FONT_SIZE, looks, type Look } from "../../workbook/styles";

const LINE = { style: "thin", color: { rgb: BORDER_COLOR } } as const;

const borders: Readonly<Record<NonNullable<Look["border"]>, FileStyle["border"]>> = {
  box: { top: LINE, right: LINE, bottom: LINE, left: LINE },
  below: { bottom: LINE },
  above: { top: LINE },
};

/**
 * Text that stays text when its cell is entered again. The library has no option for it, so such a look is marked by
 * what is so anyway, that its cells are locked; `keepingText` puts the rest into the written file.
 */
const KEPT_AS_TEXT = { locked: true };
export const keepingText = (stylesXml: string) =>
  stylesXml.replace(/<xf (?=[^>]*applyProtection=)/g, '<xf quotePrefix="1" ');

function fileStyle(look: Look, format: string | undefined, asText: boolean): FileStyle {
  const { bold, italic, size = FONT_SIZE, color, fill, border, align, wrap, indent } = look;
  return {
    font: { name: FONT, size, bold, italic, color: color === undefined ? undefined : { rgb: color } },
    fill: fill === undefined ? undefined : { type: "pattern", pattern: "solid", fgColor: { rgb: fill } },
    border: border && borders[border],
    alignment:
      align || wrap ? { horizontal: align, wrapText: wrap, indent: indent ? 1 : undefined } : undefined,
    numFmt: format === "General" ? undefined : format,
    protection: asText ? KEPT_AS_TEXT : undefined,
  };
}

/** One style object for each look and format: a sheet has thousands of cells and few of these. */
export function fileStyles(): (style: CellStyle, format: string | undefined, asText: boolean) => FileStyle {
  const made = new Map<string, FileStyle>();
  return (style, format, asText) => {
    const key = `${style} ${asText} ${format ?? ""}`;
    const known = made.get(key) ?? fileStyle(looks[style], format, asText);
    made.set(key, known);
    return known;
  };
}
