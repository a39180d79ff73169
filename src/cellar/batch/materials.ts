/**
 * The materials of a batch, in the order in which they are needed.
 */
import { domains } from "../domains";
import { number, optional, text, type NumberField, type OptionalField } from "./field-kinds";

export interface Material {
  readonly label: string;
  readonly unit: string;
  /** When it is paid for: money for the tirage is tied up until release, money for finishing only for the rest. */
  readonly phase: "tirage" | "finishing";
  /** With what it can be ordered together: all batches of a season, those in bottles of one size, or none. */
  readonly together: "season" | "size" | "batch";
}

const material = (
  label: string,
  unit: string,
  phase: Material["phase"],
  together: Material["together"] = "season",
): Material => ({ label, unit, phase, together });

export const materials = {
  tirageSugar: material("Sugar for the tirage", "kg", "tirage"),
  yeast: material("Yeast", "kg", "tirage"),
  nutrient: material("Nutrient", "kg", "tirage"),
  riddlingAid: material("Riddling aid", "kg", "tirage"),
  bottles: material("Bottles", "pieces", "tirage", "size"),
  crownCaps: material("Crown caps", "pieces", "tirage"),
  bidules: material("Bidules", "pieces", "tirage"),
  dosageSugar: material("Sugar for the dosage", "kg", "finishing"),
  dosageLiqueur: material("Concentrate, or own reserve wine", "L", "finishing", "batch"),
  corks: material("Corks", "pieces", "finishing"),
  muselets: material("Muselets", "pieces", "finishing"),
  capsules: material("Capsules", "pieces", "finishing", "size"),
  labels: material("Labels", "pieces", "finishing", "batch"),
  cartons: material("Cartons", "pieces", "finishing", "size"),
} as const satisfies Record<string, Material>;

export type MaterialKey = keyof typeof materials;
export const materialKeys = Object.keys(materials) as MaterialKey[];

/** Two lines for whatever else a batch needs, in the user's own words. */
export const OTHER_KEYS = ["other1", "other2"] as const;
export type OtherKey = (typeof OTHER_KEYS)[number];

type OrderFields = {
  readonly spare_pct: NumberField;
  readonly pack: NumberField;
  readonly price: OptionalField;
};

/** The same for every material: cells under one rule share it. The item's own unit stands beside it. */
const order: OrderFields = {
  spare_pct: number("Spare", { ...domains.percentBelow100, what: "spare" }, { blank: 0 }),
  pack: number("Pack size", domains.packSize, { blank: 1 }),
  price: optional("Price for 1", domains.money, { unit: "" }),
};

const other = {
  name: text("Other material", { maxLength: 40, blank: "" }),
  need: number("Other material: quantity", domains.quantity, { blank: 0 }),
  ...order,
};

export const materialFields = {
  ...(Object.fromEntries(materialKeys.map((key) => [key, order])) as Record<MaterialKey, OrderFields>),
  other1: other,
  other2: other,
};
