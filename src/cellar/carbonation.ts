/**
 * CO2 in wine and in the closed bottle, by subject: how much dissolves, the pressure it makes with the headspace, the
 * pressure that a dose makes and the dose for a pressure, how far bottles differ.
 */
export * from "./solubility";
export * from "./closed-bottle";
export * from "./dose-pressure";
export * from "./spread";
