/**
 * From tirage to release, downwards: a bar to the scale of days, and beside it a row for each day that matters.
 */
import { ASCENT, LINE, apart, placed, type Box, type Label } from "./geometry-labels";
import type { Point } from "./svg";

export interface TimelineEvent {
  readonly day: number;
  readonly name: string;
  readonly date: string;
}

export interface TimelineSpan<Name extends string> {
  readonly name: Name;
  readonly from: number;
  readonly to: number;
}

export interface TimelineWishes<Event extends TimelineEvent, Name extends string> {
  /** In the order of their days. */
  readonly events: readonly Event[];
  readonly spans: readonly TimelineSpan<Name>[];
  /** The day that so many months after the tirage fall on; only for months that the plan itself reaches. */
  readonly dayOfMonth: (months: number) => number;
  readonly months: number;
  readonly unit: string;
  readonly number: (months: number) => string;
}

export interface PlacedEvent<Event> {
  readonly event: Event;
  /** On the bar. */
  readonly y: number;
  readonly leader: readonly Point[];
  readonly name: Label;
  readonly date: Label;
}

export interface TimelinePicture<Event, Name> {
  readonly height: number;
  readonly bar: Box;
  readonly spans: readonly (Box & { readonly name: Name })[];
  readonly ticks: readonly { readonly y: number }[];
  readonly tickNames: readonly Label[];
  readonly events: readonly PlacedEvent<Event>[];
}

const TOP = 24;
const FOOT = 12;
const LEAST_BAR = 176;
const BAR = { left: 38, width: 18 } as const;
const NAMES = 86;
const GAP = 6;
/** A name with its date below. */
const ROW = 2 * LINE + 4;
/** Anything shorter would not be seen. */
const LEAST_SPAN = 1.5;
const STEPS = [1, 2, 3, 6, 12, 24, 36, 60, 120, 240] as const;
const LEAST_STEP = 22;

export function timelinePicture<Event extends TimelineEvent, Name extends string>(
  wishes: TimelineWishes<Event, Name>,
): TimelinePicture<Event, Name> {
  const { events } = wishes;
  const days = [...events.map(({ day }) => day), ...wishes.spans.flatMap(({ from, to }) => [from, to])];
  const [first, last] = [Math.min(...days), Math.max(...days)];
  const bar = { ...BAR, top: TOP, height: Math.max(LEAST_BAR, ROW * events.length - 2 * GAP) };
  const height = TOP + bar.height + FOOT;
  const yOf = (day: number) => bar.top + (last > first ? (day - first) / (last - first) : 0) * bar.height;
  const middles = apart(
    events.map(({ day }) => yOf(day)),
    ROW,
    Math.min(TOP - ROW / 2, height - ROW * events.length),
    height,
  );
  const ticks = ticksOf(wishes, yOf);
  return {
    height,
    bar,
    spans: wishes.spans.flatMap(({ name, from, to }) => {
      const top = yOf(from);
      return to > from ? [{ ...bar, name, top, height: Math.max(LEAST_SPAN, yOf(to) - top) }] : [];
    }),
    ticks: ticks.map(({ y }) => ({ y })),
    tickNames: placed(
      [
        [{ text: wishes.unit, x: 0, y: ASCENT, anchor: "start" }],
        ...ticks.map(({ months, y }): Label[] => [
          { text: wishes.number(months), x: BAR.left - 2 * GAP, y: y + 4, anchor: "end" },
        ]),
      ],
      { left: 0, top: 0, width: NAMES, height },
    ),
    events: events.map((event, index) => {
      const [y, middle] = [yOf(event.day), middles[index]!];
      const right = BAR.left + BAR.width;
      const nameY = middle - LINE + ASCENT;
      return {
        event,
        y,
        leader: [
          [right, y],
          [right + GAP, y],
          [NAMES - 2 * GAP, middle],
          [NAMES - GAP + 1, middle],
        ],
        name: { text: event.name, x: NAMES, y: nameY, anchor: "start" },
        date: { text: event.date, x: NAMES, y: nameY + LINE, anchor: "start" },
      };
    }),
  };
}

/** As many months as there is room for, in the round numbers of a calendar. */
function ticksOf<Event extends TimelineEvent, Name extends string>(
  { months, dayOfMonth }: TimelineWishes<Event, Name>,
  yOf: (day: number) => number,
): { readonly months: number; readonly y: number }[] {
  const whole = yOf(dayOfMonth(months)) - yOf(dayOfMonth(0));
  const step = STEPS.find((each) => (whole * each) / Math.max(1, months) >= LEAST_STEP) ?? STEPS.at(-1)!;
  return Array.from({ length: Math.floor(months / step) + 1 }, (_, index) => ({
    months: index * step,
    y: yOf(dayOfMonth(index * step)),
  }));
}
