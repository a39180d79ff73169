/**
 * Sections Batch and Base wine.
 */
import { inputRow, heading, type Section } from "./rows";

const under =
  (section: string, keys: readonly string[]): Section =>
  (batch) =>
    keys.map((key) => inputRow(`${section}.${key}`, batch));

export const batchSection: Section = (batch) => [
  ...heading("Batch"),
  ...under("batch", [
    "name",
    "lot",
    "designation",
    "rules",
    "language",
    "bottle_mL",
    "bottlesPerCase",
    "tirageDate",
    "currency",
  ])(batch),
];

export const baseWineSection: Section = (batch) => [
  ...heading("Base wine"),
  ...under("baseWine", [
    "volume_hL",
    "alcohol_vol",
    "sugar_gL",
    "dissolvedCO2_gL",
    "totalSO2_mgL",
    "acidity_gL",
    "dryness",
  ])(batch),
];
