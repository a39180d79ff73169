/**
 * The days of a batch from tirage to release. What day it is today is not known here.
 */
import { addMonths, serialFromIso } from "../../cellar/ageing";
import { READING_KEYS } from "../../cellar/batch/cellar-book";
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import { designationNamed } from "../../cellar/rules/designations";
import { shownDate, shownResult } from "../typed-numbers";
import { SWATCH, figure, write, type Saying } from "./figure";
import { timelinePicture, type TimelineEvent } from "./geometry-timeline";
import { newLooks, type Look, type Looks } from "./looks";
import { along, svg } from "./svg";

const CAPTION = "From tirage to release";

type Span = "lees" | "riddling" | "rest";
const LOOK_OF: Readonly<Record<Span, Look>> = { lees: "mid", riddling: "hatch", rest: "light" };

type Kind = "milestone" | "earliest" | "reading";
interface BatchDay extends TimelineEvent {
  readonly kind: Kind;
}

export function timelineDrawing(inputs: BatchInputs, plan: BatchPlan): HTMLElement {
  const { dates, riddling } = plan;
  const looks = newLooks();
  const milestones: BatchDay[] = [
    dayOf(dates.tirage, "Tirage"),
    dayOf(riddling.start, "Riddling starts"),
    dayOf(dates.earliestDisgorging, "Earliest disgorging", "earliest"),
    dayOf(dates.disgorging, "Disgorging"),
    dayOf(dates.release, "Release"),
  ];
  const days = milestones.map(({ day }) => day);
  const readings = readingDays(inputs);
  const isOnScale = ({ day }: BatchDay) => day >= Math.min(...days) && day <= Math.max(...days);
  const { lees_months, rest_months } = inputs.lees;
  const { leesMonths } = designationNamed(inputs.batch.designation, "designation");
  const picture = timelinePicture({
    // sorting keeps the order of the work among days that are one
    events: [...milestones, ...readings.filter(isOnScale)].sort((a, b) => a.day - b.day),
    spans: [
      { name: "lees" as const, from: dates.tirage, to: dates.disgorging },
      { name: "rest" as const, from: dates.disgorging, to: dates.release },
      { name: "riddling" as const, from: riddling.start, to: riddling.end + 1 },
    ],
    dayOfMonth: (months) => addMonths(dates.tirage, months),
    months: Math.max(lees_months + rest_months, leesMonths),
    unit: "Months",
    number: (months) => shownResult(months, 0),
  });
  const { bar, height } = picture;
  const right = bar.left + bar.width;
  return figure({
    name: "timeline",
    caption: CAPTION,
    height,
    nodes: [
      looks.defs,
      svg("rect", { ...placeOf(bar), class: "drawing-area drawing-plain" }),
      ...picture.spans.map(({ name, ...box }) =>
        svg("rect", { ...placeOf(box), ...looks.area(LOOK_OF[name]) }),
      ),
      ...picture.ticks.map(({ y }) =>
        svg("line", { x1: bar.left - 8, x2: bar.left, y1: y, y2: y, class: "drawing-axis" }),
      ),
      ...picture.events.flatMap(({ event: { kind }, y, leader, name, date }) => [
        svg("path", { d: along(leader), class: "drawing-leader" }),
        dayMark(kind, bar.left, right, y),
        write(name, kind === "reading" ? "quiet" : ""),
        write(date, kind === "reading" ? "quiet" : "strong"),
      ]),
      ...picture.tickNames.map((label) => write(label, "quiet")),
    ],
    sayings: sayingsOf(
      inputs,
      plan,
      looks,
      readings.filter((each) => !isOnScale(each)),
    ),
    unseen: picture.events.map(({ event }) => `${event.name}: ${event.date}.`),
  });
}

const dayOf = (day: number, name: string, kind: Kind = "milestone"): BatchDay => ({
  day,
  name,
  kind,
  date: shownDate(day),
});

const readingDays = ({ readings }: BatchInputs): BatchDay[] =>
  READING_KEYS.flatMap((key, index) => {
    const day = serialFromIso(readings[key].date);
    return day === undefined ? [] : [dayOf(day, `Reading ${index + 1}`, "reading")];
  });

function sayingsOf(
  { lees, riddling, batch }: BatchInputs,
  { dates }: BatchPlan,
  looks: Looks,
  offScale: readonly BatchDay[],
): Saying[] {
  const patch = (span: Span) => [
    svg("rect", {
      x: 1,
      y: 1,
      width: SWATCH.width - 2,
      height: SWATCH.height - 2,
      ...looks.area(LOOK_OF[span]),
    }),
  ];
  const isEarly = dates.disgorging < dates.earliestDisgorging;
  return [
    { mark: patch("lees"), words: `On the lees: ${shownResult(lees.lees_months, 0)} months.` },
    { mark: patch("riddling"), words: `Riddling: ${shownResult(riddling.days, 0)} days.` },
    { mark: patch("rest"), words: `Rest after disgorging: ${shownResult(lees.rest_months, 0)} months.` },
    {
      mark: [dayMark("earliest", 0, SWATCH.width, SWATCH.height / 2)],
      words: isEarly
        ? `Earliest disgorging by ${batch.designation}: ${shownDate(dates.earliestDisgorging)}. Disgorging is planned before that.`
        : `Earliest disgorging by ${batch.designation}: ${shownDate(dates.earliestDisgorging)}.`,
    },
    ...offScale.map(({ name, date }) => ({ words: `${name}, ${date}: outside these dates, not drawn.` })),
  ];
}

const placeOf = ({
  left,
  top,
  width,
  height,
}: {
  left: number;
  top: number;
  width: number;
  height: number;
}) => ({
  x: left,
  y: top,
  width,
  height,
});

function dayMark(kind: Kind, left: number, right: number, y: number): SVGElement {
  return kind === "reading"
    ? svg("circle", { cx: right, cy: y, r: 3, class: "drawing-open" })
    : svg("line", {
        x1: left,
        x2: right,
        y1: y,
        y2: y,
        class: kind === "earliest" ? "drawing-rating" : "drawing-line",
      });
}
