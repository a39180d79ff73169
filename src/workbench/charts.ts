/**
 * The charts of the sheet in view, drawn over their cells and again whenever these change. The grid itself keeps
 * nothing of them but the sheet's own mark, so that undoing, renaming and copying a sheet need no care here.
 */
import { numfmt } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import type { Book } from "../hosts/grid/book";
import { chartId, chartsOf, readChart, type ChartReading } from "../hosts/grid/chart-cells";
import { chartSvg } from "../hosts/grid/chart-svg";
import { svgElement } from "../hosts/grid/svg";

const COMPONENT = "mousse-chart";
const VALUES = "sheet.mutation.set-range-values";
const MUTATION = "sheet.mutation.";
const FILLING = { width: "100%", height: "100%" };

/** The grid draws what floats over its cells with React, and hands out what that takes. */
type CreateElement = (tag: string, properties: object) => unknown;

export function showCharts(api: FUniver): void {
  const pictures = new Map<string, Picture>();
  const createElement = api.getComponentManager().reactUtils.createElement as CreateElement;
  api.registerComponent(COMPONENT, ({ data }: { data: { id: string } }) =>
    createElement("div", {
      style: FILLING,
      ref: (element: HTMLElement | null) => pictures.get(data.id)?.putInto(element),
    }),
  );

  let shown: string | undefined;
  let remove: (() => void)[] = [];
  const place = (book: Book) => {
    const sheet = book.getActiveSheet();
    shown = sheet.getSheetId();
    for (const each of remove) each();
    pictures.clear();
    remove = chartsOf(sheet).flatMap((chart) => {
      const id = chartId(sheet.getSheetId(), chart);
      const zoom = () => sheet.getZoom();
      pictures.set(id, new Picture(() => readChart(book, sheet, chart), zoom));
      const { row, column, lastRow, lastColumn } = chart.place;
      const cells = sheet.getRange(row, column, lastRow - row + 1, lastColumn - column + 1);
      const layer = { componentKey: COMPONENT, data: { id }, allowTransform: false };
      const floating = sheet.addFloatDomToRange(cells, layer, {}, id);
      return floating ? [() => floating.dispose()] : [];
    });
  };

  // after whatever else this command sets off, and once for many commands
  const onceAFrame = collected((moved) => {
    const book = api.getActiveWorkbook();
    if (!book) return;
    if (moved || book.getActiveSheet().getSheetId() !== shown) place(book);
    else for (const picture of pictures.values()) picture.draw();
  });
  api.addEvent(api.Event.CommandExecuted, ({ id }) => onceAFrame(id.startsWith(MUTATION) && id !== VALUES));
}

/** Calls once a frame, with whether any of the calls collected since said so. */
function collected(call: (any: boolean) => void): (one: boolean) => void {
  let waiting: { any: boolean } | undefined;
  return (one) => {
    if (waiting) {
      waiting.any ||= one;
      return;
    }
    const frame = (waiting = { any: one });
    requestAnimationFrame(() => {
      waiting = undefined;
      call(frame.any);
    });
  };
}

/** One chart on the page, drawn anew only if its cells or its size are other than before. */
class Picture {
  #element: HTMLElement | null = null;
  #drawn = "";
  readonly #sized = new ResizeObserver(() => this.draw());

  constructor(
    private readonly read: () => ChartReading,
    private readonly zoom: () => number,
  ) {}

  putInto(element: HTMLElement | null): void {
    this.#sized.disconnect();
    this.#element = element;
    this.#drawn = "";
    if (element) this.#sized.observe(element);
  }

  draw(): void {
    const zoom = this.zoom();
    const [width, height] = [
      (this.#element?.clientWidth ?? 0) / zoom,
      (this.#element?.clientHeight ?? 0) / zoom,
    ];
    if (width === 0 || height === 0) return;
    const reading = this.read();
    const drawn = JSON.stringify([width, height, reading]);
    if (drawn === this.#drawn) return;
    this.#drawn = drawn;
    const picture = chartSvg(reading, { width, height }, (value, format) => numfmt.format(format, value));
    this.#element?.replaceChildren(svgElement(picture, document));
  }
}
