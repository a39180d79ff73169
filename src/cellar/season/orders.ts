/**
 * What a season needs of each material, in packs. Batches order together what is the same for all of them, or for all
 * in bottles of one size; labels and whatever else is a batch's own are ordered batch by batch.
 */
import { packsToOrder } from "../costing";
import { OTHER_KEYS, materialKeys, materials, type MaterialKey, type OtherKey } from "../batch/materials";
import type { SeasonBatch } from "./season";

export interface OrderLine {
  readonly material: MaterialKey | OtherKey;
  /** Only what goes with bottles of this size, mL. */
  readonly sizeMl: number | null;
  readonly label: string;
  readonly unit: string;
  readonly together: boolean;
}

const isPlain = (key: MaterialKey | OtherKey): key is MaterialKey => key in materials;

/** The lines of the order, for the sizes that the season fills, smallest first. */
export function orderLines(sizesMl: readonly number[]): OrderLine[] {
  const sizes = [...new Set(sizesMl)].sort((a, b) => a - b);
  return [...materialKeys, ...OTHER_KEYS].flatMap((material): OrderLine[] => {
    const { label, unit, together } = isPlain(material)
      ? materials[material]
      : ({ label: `Other ${OTHER_KEYS.indexOf(material) + 1}`, unit: "", together: "batch" } as const);
    const common = { material, unit, together: together !== "batch" };
    return together === "size"
      ? sizes.map((sizeMl) => ({ ...common, sizeMl, label: `${label}, ${sizeMl} mL` }))
      : [{ ...common, sizeMl: null, label }];
  });
}

export interface BatchNeed {
  /** With the batch's spare. */
  readonly needed: number;
  readonly pack: number | "";
  /** Packs if the batch orders alone. */
  readonly packs: number;
  readonly cost: number;
  /** The day of the tirage or of disgorging, where something is needed. */
  readonly day: number | "";
}

const NOTHING: BatchNeed = { needed: 0, pack: "", packs: 0, cost: 0, day: "" };
export const phaseOf = (material: MaterialKey | OtherKey) =>
  isPlain(material) ? materials[material].phase : "finishing";

export function batchNeed({ material, sizeMl }: OrderLine, { inputs, plan }: SeasonBatch): BatchNeed {
  if (sizeMl !== null && inputs.batch.bottle_mL !== sizeMl) return NOTHING;
  const { need, packs, cost } = plan.costs.lines[material];
  const { spare_pct, pack } = inputs.materials[material];
  const { tirage, disgorging } = plan.dates;
  const isNeeded = need > 0;
  return {
    needed: need * (1 + spare_pct / 100),
    pack: isNeeded ? pack : "",
    packs,
    cost,
    day: isNeeded ? (phaseOf(material) === "tirage" ? tirage : disgorging) : "",
  };
}

/** What stands for a pack size where the batches do not agree on one. */
export const SEVERAL_PACKS = "several";

export interface Order {
  readonly needed: number;
  readonly pack: number | "" | typeof SEVERAL_PACKS;
  readonly packs: number;
  readonly packsAlone: number;
  readonly saved: number;
  readonly cost: number;
  /** The first day on which any of it is needed. */
  readonly first: number | "";
}

export function orderOf(line: OrderLine, batches: readonly SeasonBatch[]): Order {
  const needs = batches.map((batch) => batchNeed(line, batch));
  const sum = (of: (need: BatchNeed) => number) => needs.reduce((total, need) => total + of(need), 0);
  const packSizes = new Set(needs.flatMap(({ pack }) => (pack === "" ? [] : [pack])));
  const [only] = packSizes;
  const pack = packSizes.size > 1 ? SEVERAL_PACKS : (only ?? "");
  const days = needs.flatMap(({ day }) => (day === "" ? [] : [day]));
  const packsAlone = sum(({ packs }) => packs);
  const packs =
    line.together && typeof pack === "number"
      ? packsToOrder(
          sum(({ needed }) => needed),
          pack,
          0,
        )
      : packsAlone;
  return {
    needed: sum(({ needed }) => needed),
    pack,
    packs,
    packsAlone,
    saved: packsAlone - packs,
    cost: sum(({ cost }) => cost),
    first: days.length === 0 ? "" : Math.min(...days),
  };
}
