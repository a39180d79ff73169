/**
 * Fonts, fills, borders and alignment. The plain look is set once a sheet; cells get what differs from it.
 */
import type { CellStyle, SheetData } from "../../workbook/data";
import { BORDER_COLOR, FONT, FONT_SIZE, looks, type Look } from "../../workbook/styles";
import { areaAt, listsOf, rectangleAddress, rectangles, untracked, type Area, type Rectangle } from "./areas";
import { groupedBy } from "./grouping";
import type { Offered } from "./offered";
import { costOf, rangeCost, settingCost, type Pieces } from "./sizes";

type Edge = "EdgeTop" | "EdgeBottom" | "EdgeLeft" | "EdgeRight" | "InsideHorizontal" | "InsideVertical";
interface Shape {
  readonly tall: boolean;
  readonly wide: boolean;
}

const NO_SHAPE: Shape = { tall: false, wide: false };
const PLAIN_COLOR = looks.label.color;
const hex = (color: string) => `#${color}`;

export function* applyLooks(sheet: Excel.Worksheet, data: SheetData, offered: Offered): Pieces {
  const plain = {
    name: FONT,
    size: FONT_SIZE,
    ...(PLAIN_COLOR !== undefined && { color: hex(PLAIN_COLOR) }),
  };
  yield rangeCost("") + costOf(2, 0) + settingCost(plain);
  untracked(sheet.getRange()).format.font.set(plain);
  for (const group of groupedBy(styledCells(data), ({ style }) => style)) {
    const look = looks[group[0].style];
    const format = formatOf(look, offered);
    if (!format && !look.border) continue;
    const all = rectangles(group);
    for (const { shape, members } of look.border ? byShape(all) : [{ shape: NO_SHAPE, members: all }]) {
      const edges = look.border ? edgesOf(look.border, shape) : [];
      const cost = settingCost(format ?? {}) + edges.length * costOf(1, 2, EDGE_LOOK);
      for (const list of listsOf(members.map(rectangleAddress), offered)) {
        yield rangeCost(list) + costOf(2, 0) + cost;
        const area = areaAt(sheet, list);
        if (format) area.format.set(format);
        drawEdges(area, edges);
      }
    }
  }
}

/** A merged cell looks alike over all its columns. */
function styledCells({ cells, merges }: SheetData): { row: number; column: number; style: CellStyle }[] {
  const lastColumns = new Map(merges.map(({ row, column, lastColumn }) => [`${row} ${column}`, lastColumn]));
  return cells.flatMap(({ row, column, style }) => {
    const columns = (lastColumns.get(`${row} ${column}`) ?? column) - column + 1;
    return Array.from({ length: columns }, (_, index) => ({ row, column: column + index, style }));
  });
}

function formatOf({ bold, italic, size, color, fill, align, wrap, indent }: Look, { indents }: Offered) {
  const font = {
    ...(bold && { bold }),
    ...(italic && { italic }),
    ...(size !== undefined && size !== FONT_SIZE && { size }),
    ...(color !== undefined && color !== PLAIN_COLOR && { color: hex(color) }),
  };
  const format = {
    ...(Object.keys(font).length > 0 && { font }),
    ...(fill !== undefined && { fill: { color: hex(fill) } }),
    ...(align && { horizontalAlignment: ALIGNMENTS[align] }),
    ...(wrap && { wrapText: wrap }),
    ...(indent && indents && { indentLevel: 1 }),
  };
  return Object.keys(format).length > 0 ? format : undefined;
}

const ALIGNMENTS = { left: "Left", right: "Right", center: "Center" } as const;

const EDGES: Readonly<Record<NonNullable<Look["border"]>, readonly Edge[]>> = {
  box: ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight"],
  below: ["EdgeBottom"],
  above: ["EdgeTop"],
};

const EDGE_LOOK = { style: "Continuous", color: hex(BORDER_COLOR) } as const;

function edgesOf(border: NonNullable<Look["border"]>, { tall, wide }: Shape): Edge[] {
  const inside: Edge[] = [];
  if (tall) inside.push("InsideHorizontal");
  if (wide && border === "box") inside.push("InsideVertical");
  return [...EDGES[border], ...inside];
}

function drawEdges(area: Area, edges: readonly Edge[]): void {
  for (const edge of edges) area.format.borders.getItem(edge).set(EDGE_LOOK);
}

/** An edge goes round a range, so cells within need inside lines, which a single row or column has not. */
function byShape(all: readonly Rectangle[]): { shape: Shape; members: Rectangle[] }[] {
  const shaped = all.map((member) => ({
    member,
    shape: { tall: member.row < member.lastRow, wide: member.column < member.lastColumn },
  }));
  return groupedBy(shaped, ({ shape }) => `${shape.tall} ${shape.wide}`).map((group) => ({
    shape: group[0].shape,
    members: group.map(({ member }) => member),
  }));
}
