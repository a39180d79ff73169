/**
 * On the lees: riddling, and what gauge readings say of the fermentation.
 */
import { serialFromIso } from "../ageing";
import { shareFermented } from "../calibration";
import {
  DEFAULT_SPREAD,
  expectedPressure,
  pressureRange,
  shiftPressure,
  underCrownCap,
  type Fill,
} from "../carbonation";
import { domains, isWithin } from "../domains";
import { pressureAt20 } from "../gauge-table";
import { racksNeeded, riddlingHours, riddlingSchedule, type Turn } from "../riddling";
import { excessBar, invertGL, type ExcessBar } from "../units";
import { orNull } from "./attempt";
import { READING_KEYS, type ReadingKey } from "./cellar-book";
import type { BatchInputs } from "./fields";
import { wineOf, type TiragePlan } from "./plan-tirage";

export interface RiddlingPlan {
  /** Dates as spreadsheet serials: the first turn and the last. */
  readonly start: number;
  readonly end: number;
  readonly daysFromTirage: number;
  readonly racks: number;
  readonly turns: number;
  /** Blank where no rate was given. */
  readonly hours: number | "";
  readonly schedule: readonly Turn[];
}

export function planRiddling(
  { riddling }: BatchInputs,
  tirageDate: number,
  disgorging: number,
  bottles: number,
): RiddlingPlan {
  const end = disgorging - riddling.wait_days;
  const start = end - riddling.days + 1;
  const turns = riddling.days * riddling.turnsPerDay;
  return {
    start,
    end,
    daysFromTirage: start - tirageDate,
    racks: racksNeeded(bottles, riddling.places),
    turns,
    hours: riddling.bottlesPerHour === null ? "" : riddlingHours(bottles, turns, riddling.bottlesPerHour),
    schedule: isWithin(domains.dateSerial, start)
      ? riddlingSchedule(start, riddling.days, riddling.turnsPerDay)
      : [],
  };
}

/** Rules of thumb, stated in the sheet (common practice, no source). */
export const READING_RULES = {
  finishedShare: 0.95,
  stuckDays: 14,
  stuckRise: 0.02,
} as const;

/** What stands for the share where a reading lies above all that the dose explains. */
export const ABOVE_ALL = "above all";

export const READING_STATES = {
  finished: "finished",
  working: "still working",
  stuck: "stuck",
  tooHigh: "too high",
  check: "check it",
} as const;
export type ReadingState = (typeof READING_STATES)[keyof typeof READING_STATES] | "";

export interface ReadingPlan {
  /** null: the bottle cannot show that reading; blank where nothing was read. */
  readonly share: number | null | "" | typeof ABOVE_ALL;
  readonly at20: ExcessBar | "" | null;
  /** null outside the table's 0 to 25 °C. */
  readonly at20ByTable: ExcessBar | "" | null;
  readonly state: ReadingState;
}

const NOTHING_READ: ReadingPlan = { share: "", at20: "", at20ByTable: "", state: "" };

export function planReadings(inputs: BatchInputs, tirage: TiragePlan): Record<ReadingKey, ReadingPlan> {
  const { batch, tirage: given, readings } = inputs;
  const fill: Fill = { ...wineOf(inputs), dose: tirage.dose };
  // as for a wine that has finished: what sugar is left changes it by little
  const at20 = (reading: ExcessBar, celsius: number) =>
    shiftPressure(
      reading,
      celsius,
      20,
      tirage.alcoholAfterVol,
      invertGL(0),
      underCrownCap(given.headspace_pct),
    );
  const tirageDay = serialFromIso(batch.tirageDate)!;
  const earlier: Dated[] = [];

  const entries = READING_KEYS.map((key): [ReadingKey, ReadingPlan] => {
    const { date, pressure_bar: bar, at_C: celsius } = readings[key];
    if (bar === null || celsius === null) return [key, NOTHING_READ];
    const reading = excessBar(bar);
    const share =
      reading >= expectedPressure(fill, celsius)
        ? ABOVE_ALL
        : orNull(() => shareFermented(reading, celsius, fill));
    const day = serialFromIso(date);
    const state =
      day !== undefined && day < tirageDay
        ? READING_STATES.check
        : stateOf(share, reading > pressureRange(fill, celsius, DEFAULT_SPREAD).high, day, earlier);
    if (day !== undefined && typeof share === "number") earlier.push({ day, share });
    return [
      key,
      {
        share,
        at20: orNull(() => at20(reading, celsius)),
        at20ByTable: isWithin(domains.gaugeTableC, celsius) ? pressureAt20(reading, celsius) : null,
        state,
      },
    ];
  });
  return Object.fromEntries(entries) as Record<ReadingKey, ReadingPlan>;
}

interface Dated {
  readonly day: number;
  readonly share: number;
}

function stateOf(
  share: ReadingPlan["share"],
  tooHigh: boolean,
  day: number | undefined,
  earlier: readonly Dated[],
): ReadingState {
  const { finished, working, stuck, tooHigh: high, check } = READING_STATES;
  if (share === ABOVE_ALL) return tooHigh ? high : finished;
  if (typeof share !== "number") return check;
  if (share >= READING_RULES.finishedShare) return finished;
  if (day === undefined) return working;
  const rests = earlier.some(
    (each) => each.day <= day - READING_RULES.stuckDays && each.share > share - READING_RULES.stuckRise,
  );
  return rests ? stuck : working;
}
