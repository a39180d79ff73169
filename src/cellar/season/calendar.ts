/**
 * The work of a season month by month, what is to be paid in each, and the money tied up.
 *
 * Months are counted as year·12 + month. Periods run from one day of a month to the same day of another (the last-day
 * rule), so a batch of n months ends n calendar months later. Interest of the k-th month is that of the money with the
 * interest before it, so that all months together come to COST.HOLDING.
 */
import { dateFromSerial, serialFromDate } from "../ageing";
import { MONTHS_PER_YEAR } from "../costing";
import type { SeasonBatch } from "./season";

export const monthNumber = (serial: number) => {
  const { year, month } = dateFromSerial(serial);
  return year * MONTHS_PER_YEAR + month;
};

export interface BatchMoney {
  readonly tirageMonth: number;
  readonly riddlingMonth: number;
  readonly disgorgingMonth: number;
  readonly releaseMonth: number;
  readonly paidAtTirage: number;
  readonly paidAtRiddling: number;
  readonly paidAtDisgorging: number;
  readonly paidAtRelease: number;
  readonly storageAMonth: number;
  readonly interestPct: number;
  readonly leesDays: number;
  readonly restDays: number;
  readonly finished: number;
  readonly tirageHours: number;
  readonly riddlingHours: number;
  readonly disgorgingHours: number;
  readonly finishingHours: number;
}

export function batchMoney({ inputs, plan }: SeasonBatch): BatchMoney {
  const { costs, dates, riddling } = plan;
  const months = inputs.lees.lees_months + inputs.lees.rest_months;
  return {
    tirageMonth: monthNumber(dates.tirage),
    riddlingMonth: monthNumber(riddling.start),
    disgorgingMonth: monthNumber(dates.disgorging),
    releaseMonth: monthNumber(dates.release),
    paidAtTirage: costs.baseWine + costs.tirageMaterials + costs.tirageLabour,
    paidAtRiddling: costs.riddlingLabour,
    paidAtDisgorging: costs.finishingWine + costs.finishingMaterials + costs.disgorgingLabour,
    paidAtRelease: costs.finishingLabour + costs.duty,
    storageAMonth: months === 0 ? costs.storage : costs.storage / months,
    interestPct: inputs.costs.interest_pct,
    leesDays: dates.disgorging - dates.tirage,
    restDays: dates.release - dates.disgorging,
    finished: plan.dosage.bottlesFinished,
    tirageHours: inputs.costs.tirage_hours,
    riddlingHours: costs.riddlingHours,
    disgorgingHours: inputs.costs.disgorging_hours,
    finishingHours: inputs.costs.finishing_hours,
  };
}

export interface SeasonMonth {
  /** Its first day. */
  readonly date: number;
  readonly tirageHl: number;
  readonly filled: number;
  readonly riddling: number;
  readonly disgorging: number;
  readonly released: number;
  readonly hours: number;
  readonly toPay: number;
  readonly tiedUp: number;
  readonly interest: number;
}

/** More would not be read; what lies beyond is counted. */
export const MOST_MONTHS = 120;
/** For plans that are put off after the sheet was written. */
const SPARE_MONTHS = 3;

export function seasonMonths(batches: readonly SeasonBatch[]): SeasonMonth[] {
  const all = batches.map((batch) => ({ ...batch, money: batchMoney(batch) }));
  const first = Math.min(...all.flatMap(({ money }) => [money.tirageMonth, money.riddlingMonth]));
  const last = Math.max(...all.map(({ money }) => money.releaseMonth));
  const count = Math.min(last - first + 1 + SPARE_MONTHS, MOST_MONTHS);
  return Array.from({ length: count }, (_, index) => {
    const month = first + index;
    const sum = (of: (batch: (typeof all)[number]) => number) =>
      all.reduce((total, batch) => total + of(batch), 0);
    const when = (at: number, amount: number) => (at === month ? amount : 0);
    return {
      date: serialFromDate(Math.floor((month - 1) / MONTHS_PER_YEAR), ((month - 1) % MONTHS_PER_YEAR) + 1, 1),
      tirageHl: sum(({ money, inputs }) => when(money.tirageMonth, inputs.baseWine.volume_hL)),
      filled: sum(({ money, plan }) => when(money.tirageMonth, plan.tirage.bottles)),
      riddling: sum(({ money, plan }) => when(money.riddlingMonth, plan.tirage.bottles)),
      disgorging: sum(({ money, plan }) => when(money.disgorgingMonth, plan.dosage.bottlesFinished)),
      released: sum(({ money, plan }) => when(money.releaseMonth, plan.costs.saleableBottles)),
      hours: sum(
        ({ money }) =>
          when(money.tirageMonth, money.tirageHours) +
          when(money.riddlingMonth, money.riddlingHours) +
          when(money.disgorgingMonth, money.disgorgingHours) +
          when(money.releaseMonth, money.finishingHours),
      ),
      toPay: sum(
        ({ money }) =>
          when(money.tirageMonth, money.paidAtTirage) +
          when(money.riddlingMonth, money.paidAtRiddling) +
          when(money.disgorgingMonth, money.paidAtDisgorging) +
          when(money.releaseMonth, money.paidAtRelease) +
          (isStored(money, month) ? money.storageAMonth : 0),
      ),
      tiedUp: sum(({ money }) => tiedUp(money, month)),
      interest: sum(({ money }) => tiedUp(money, month) * (monthlyFactor(money.interestPct) - 1)),
    };
  });
}

/** Storage is paid for each month that ends; a batch that is released in its own month pays it at once. */
const isStored = ({ tirageMonth, releaseMonth }: BatchMoney, month: number) =>
  tirageMonth === releaseMonth ? month === tirageMonth : month > tirageMonth && month <= releaseMonth;

const monthlyFactor = (annualPct: number) => (1 + annualPct / 100) ** (1 / MONTHS_PER_YEAR);

/** Money in the batch during a month, with the interest so far: that of the tirage, and that of the finishing. */
function tiedUp(money: BatchMoney, month: number): number {
  const grown = (amount: number, from: number) =>
    month > from && month <= money.releaseMonth
      ? amount * monthlyFactor(money.interestPct) ** (month - from - 1)
      : 0;
  return (
    grown(money.paidAtTirage, money.tirageMonth) +
    grown(money.paidAtDisgorging + money.paidAtRiddling, money.disgorgingMonth)
  );
}
