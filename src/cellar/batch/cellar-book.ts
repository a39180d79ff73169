/**
 * What is found out as the batch goes on: gauge readings on the lees, and what really came of the plan.
 */
import { domains } from "../domains";
import { date, optional, type DateField, type OptionalField } from "./field-kinds";

export const READING_KEYS = ["r1", "r2", "r3", "r4", "r5", "r6"] as const;
export type ReadingKey = (typeof READING_KEYS)[number];

type ReadingFields = {
  readonly date: DateField;
  readonly pressure_bar: OptionalField;
  readonly at_C: OptionalField;
};

/** The same for every reading: cells under one rule share it. */
const reading: ReadingFields = {
  date: date("Day of the reading", { blank: "" }),
  pressure_bar: optional("Excess pressure read", domains.pressureBar),
  at_C: optional("Temperature of the bottle", domains.temperatureC, {
    note: "a pressure means nothing without its temperature",
  }),
};

export const readingFields = Object.fromEntries(READING_KEYS.map((key) => [key, reading])) as Record<
  ReadingKey,
  ReadingFields
>;

export const actualFields = {
  bottlesFilled: optional("Bottles filled", domains.bottles),
  bottlesBroken: optional("Bottles broken", domains.bottles),
  bottlesDisgorged: optional("Bottles disgorged", domains.bottles),
  bottlesFinished: optional("Bottles finished", domains.bottles),
  tirageSugar_kg: optional("Sugar used at tirage", domains.quantity, { unit: "kg" }),
  pressure_bar: optional("Excess pressure of the finished wine", domains.pressureBar),
  pressureAt_C: optional("Temperature of that pressure", domains.temperatureC),
  sugar_gL: optional("Glucose + fructose, analysed", domains.wineSugarGL),
  alcohol_vol: optional("Alcohol, analysed", domains.alcoholVol),
  cost: optional("Cost of the batch", domains.money, { unit: "" }),
} as const;
