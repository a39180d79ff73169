/**
 * Which fields matter, given what has been chosen. A field that does not matter is hidden, and what it holds is
 * kept but not used.
 */
type Choices = (dotted: string) => string;

const bySugarInWine = (choice: Choices) => choice("dosage.kind") === "sugar in wine";
const dosed = (choice: Choices) => choice("dosage.kind") !== "none";

const conditions: Readonly<Record<string, (choice: Choices) => boolean>> = {
  "tirage.pressure_bar": (choice) => choice("tirage.goal") === "pressure",
  "tirage.pressureAt_C": (choice) => choice("tirage.goal") === "pressure",
  "tirage.dose_gL": (choice) => choice("tirage.goal") === "dose",
  "tirage.liqueur_gL": (choice) => choice("tirage.sugarForm") === "liqueur",
  "dosage.target_gL": dosed,
  "dosage.strength_gL": dosed,
  "dosage.liqueur_vol": dosed,
  "dosage.carrier_gL": bySugarInWine,
  "dosage.stock_L": dosed,
  "dosage.reserve_pct": dosed,
};

export const isRelevant = (dotted: string, choice: Choices): boolean => conditions[dotted]?.(choice) ?? true;
