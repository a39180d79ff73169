/**
 * What a part of the benchmark found, as data, and its forms: aligned text for the screen, Markdown for the docs.
 */
export interface Table {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

/** A number with its limit: how large it may be, and the least it could be at all. */
export interface Judged {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly atMost?: number;
  readonly least?: { readonly value: number; readonly what: string };
  /** Why a limit is missed, where that is known; said only where it is. */
  readonly why?: string;
}

export interface Report {
  readonly title: string;
  /** How it was measured and what has to be known to read it. */
  readonly notes: readonly string[];
  readonly tables: readonly Table[];
  readonly judged: readonly Judged[];
}

/** Three digits, thousands apart: 0.0123, 4.57, 10 300. */
export function short(value: number): string {
  if (!Number.isFinite(value)) return String(value);
  if (Number.isInteger(value) || Math.abs(value) >= 1000)
    return String(Math.round(value)).replace(/\B(?=(\d{3})+(?!\d))/g, " ");
  return String(Number(value.toPrecision(3)));
}

const shown = (cell: string | number) => (typeof cell === "number" ? short(cell) : cell);
const measure = (value: number, unit: string) => `${short(value)}${unit === "×" ? " ×" : ` ${unit}`}`.trim();

/** Whether the limit is kept, and by how much; what the least is, and how far off. */
export function verdict({ value, unit, atMost, least, why }: Judged): string {
  const parts: string[] = [];
  if (atMost !== undefined) {
    const share = value / atMost;
    const limit = `limit ${measure(atMost, unit)}`;
    parts.push(
      value <= atMost
        ? `${limit}: kept, ${short(100 * (1 - share))} % below it`
        : `${limit}: MISSED, ${atMost === 0 ? "none wanted" : share < 2 ? `${short(100 * (share - 1))} % above it` : `${short(share)} times as much`}${why === undefined ? "" : ` (${why})`}`,
    );
  }
  if (least) {
    const times = value / least.value;
    parts.push(
      `the least there could be is ${measure(least.value, unit)} (${least.what}): ${times < 1.05 ? "reached" : `${short(times)} times that`}`,
    );
  }
  return parts.join("; ");
}

export const misses = ({ judged }: Report) =>
  judged.filter(({ value, atMost }) => atMost !== undefined && !(value <= atMost));

const judgedLine = (each: Judged) => `${each.what}: ${measure(each.value, each.unit)}; ${verdict(each)}`;

function aligned({ caption, columns, rows }: Table): string {
  const lines = [columns, ...rows.map((row) => row.map(shown))];
  const isNumber = columns.map((_, column) => rows.some((row) => typeof row[column] === "number"));
  const widths = columns.map((_, column) => Math.max(...lines.map((line) => (line[column] ?? "").length)));
  const padded = lines.map((line) =>
    widths
      .map((width, column) =>
        isNumber[column] ? (line[column] ?? "").padStart(width) : (line[column] ?? "").padEnd(width),
      )
      .join("  ")
      .trimEnd(),
  );
  return [caption, ...padded.map((line) => `  ${line}`)].join("\n");
}

export function asText(report: Report): string {
  return [
    `== ${report.title} ==`,
    ...report.notes,
    ...report.tables.map((table) => `\n${aligned(table)}`),
    ...(report.judged.length > 0 ? ["", ...report.judged.map((each) => `> ${judgedLine(each)}`)] : []),
  ].join("\n");
}

const line = (cells: readonly string[]) =>
  `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;

function markdownTable({ caption, columns, rows }: Table): string {
  const marks = columns.map((_, column) =>
    rows.some((row) => typeof row[column] === "number") ? "--:" : "---",
  );
  return [`**${caption}**\n`, line(columns), line(marks), ...rows.map((row) => line(row.map(shown)))].join(
    "\n",
  );
}

export function asMarkdown(report: Report): string {
  const judged: Table = {
    caption: "How far from the limit",
    columns: ["what", "found", "in words"],
    rows: report.judged.map((each) => [each.what, measure(each.value, each.unit), verdict(each)]),
  };
  return [
    `## ${report.title}`,
    ...report.notes,
    ...report.tables.map(markdownTable),
    ...(report.judged.length > 0 ? [markdownTable(judged)] : []),
  ].join("\n\n");
}
