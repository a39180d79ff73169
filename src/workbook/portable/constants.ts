/**
 * The constants of the portable forms, each in a row of the workings.
 */
import {
  ATMOSPHERE_BAR,
  CO2_PER_SUCROSE,
  ETHANOL_KG_PER_L,
  INVERT_G_PER_L_PER_VOL,
  INVERT_PER_SUCROSE,
  LITRES_PER_KG_SUGAR,
  NITROGEN_AT_20C_BAR,
} from "../../cellar/constants";
import { GAS_GL_K_PER_BAR } from "../../cellar/closed-bottle";
import type { ConstantKey } from "./form";

export interface Constant {
  readonly label: string;
  readonly unit: string;
  readonly value: number;
}

const constant = (label: string, unit: string, value: number): Constant => ({ label, unit, value });

export const constants: Readonly<Record<ConstantKey, Constant>> = {
  inv: constant("Glucose + fructose from 1 g of sucrose", "g", INVERT_PER_SUCROSE),
  vol: constant("Glucose + fructose for 1 % vol", "g/L", INVERT_G_PER_L_PER_VOL),
  co2: constant("CO2 from 1 g of sucrose, in full", "g", CO2_PER_SUCROSE),
  displaced: constant("Displaced by 1 kg of sugar", "L", LITRES_PER_KG_SUGAR),
  atmosphere: constant("Atmosphere", "bar", ATMOSPHERE_BAR),
  nitrogen: constant("Nitrogen under the cap at 20 °C", "bar", NITROGEN_AT_20C_BAR),
  gas: constant("CO2 gas in 1 L at 1 bar, times the kelvin", "g K/L", GAS_GL_K_PER_BAR),
  ethanol: constant("Density of ethanol", "kg/L", ETHANOL_KG_PER_L),
};
