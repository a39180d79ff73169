/**
 * Quantities that must never be mixed, as distinct types: excess and absolute pressure, sucrose and
 * glucose + fructose. Passing one for the other does not compile. They are plain numbers at run time.
 */
import { ATMOSPHERE_BAR, INVERT_PER_SUCROSE, KELVIN_AT_0C } from "./constants";

declare const quantity: unique symbol;
type Quantity<Name extends string> = number & { readonly [quantity]: Name };

/** Pressure above atmospheric (gauge), bar. */
export type ExcessBar = Quantity<"excess bar">;
/** Pressure above vacuum, bar. */
export type AbsoluteBar = Quantity<"absolute bar">;
/** Strength as sucrose (weighed cane or beet sugar), g/L. */
export type SucroseGL = Quantity<"sucrose g/L">;
/** Strength as glucose + fructose (analysis, label, grape concentrate), g/L. */
export type InvertGL = Quantity<"glucose + fructose g/L">;

export const excessBar = (value: number) => value as ExcessBar;
export const absoluteBar = (value: number) => value as AbsoluteBar;
export const sucroseGL = (value: number) => value as SucroseGL;
export const invertGL = (value: number) => value as InvertGL;

export const excessToAbsolute = (pressure: ExcessBar) => absoluteBar(pressure + ATMOSPHERE_BAR);
export const absoluteToExcess = (pressure: AbsoluteBar) => excessBar(pressure - ATMOSPHERE_BAR);
export const sucroseToInvert = (strength: SucroseGL) => invertGL(strength * INVERT_PER_SUCROSE);
export const invertToSucrose = (strength: InvertGL) => sucroseGL(strength / INVERT_PER_SUCROSE);

export const kelvin = (temperatureC: number) => temperatureC + KELVIN_AT_0C;

export const LITRES_PER_HL = 100;
export const ML_PER_LITRE = 1000;
