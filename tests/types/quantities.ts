/**
 * Never run: the compiler must reject every line marked here. Bases and pressure scales that are mixed do not compile.
 */
import {
  dissolvedCo2,
  expectedPressure,
  shiftPressure,
  solubility,
  underCrownCap,
  type Fill,
} from "../../src/cellar/carbonation";
import { alcoholAfter, co2FromDose } from "../../src/cellar/fermentation";
import { pressureAt20 } from "../../src/cellar/gauge-table";
import { pressureClass } from "../../src/cellar/rules/pressure-classes";
import { liqueurRecipe } from "../../src/cellar/sugar";
import { permittedTerms } from "../../src/cellar/sweetness";
import { tirageLiqueurL, tirageSugarKg } from "../../src/cellar/tirage";
import {
  absoluteBar,
  absoluteToExcess,
  excessBar,
  excessToAbsolute,
  invertGL,
  invertToSucrose,
  sucroseGL,
  sucroseToInvert,
} from "../../src/cellar/units";

const excess = excessBar(6);
const absolute = absoluteBar(7);
const sucrose = sucroseGL(24);
const invert = invertGL(1);
const bottle = underCrownCap(3);

// the right way round
tirageSugarKg(50, sucrose, invert);
dissolvedCo2(absolute, 20, 12, invert);
shiftPressure(excess, 10, 20, 12, invert, bottle);

// @ts-expect-error a dose is sucrose, not glucose + fructose
tirageSugarKg(50, invert, invert);
// @ts-expect-error the wine's own sugar is glucose + fructose, not sucrose
tirageSugarKg(50, sucrose, sucrose);
// @ts-expect-error a bare number has no basis
tirageSugarKg(50, 24, invert);
// @ts-expect-error a liqueur is weighed, so sucrose
tirageLiqueurL(50, sucrose, invert, invert);
// @ts-expect-error the recipe's carrier is on the sucrose basis
liqueurRecipe(10, sucrose, invert);
// @ts-expect-error alcohol after takes the wine's sugar as analysed
alcoholAfter(10.5, sucrose, sucrose);
// @ts-expect-error the CO2 comes from sucrose
co2FromDose(invert, 0.95);
// @ts-expect-error terms go by glucose + fructose
permittedTerms(sucrose, true, "EU", "en");
// @ts-expect-error solubility goes by glucose + fructose
solubility(20, 12, sucrose);
// @ts-expect-error already sucrose
invertToSucrose(sucrose);
// @ts-expect-error already glucose + fructose
sucroseToInvert(invert);
// @ts-expect-error solubility works with absolute pressure
dissolvedCo2(excess, 20, 12, invert);
// @ts-expect-error a gauge reads excess pressure
pressureAt20(absolute, 10);
// @ts-expect-error the law speaks of excess pressure
pressureClass(absolute, 750, "EU");
// @ts-expect-error a closed bottle's pressure is excess
shiftPressure(absolute, 10, 20, 12, invert, bottle);
// @ts-expect-error a bare number is neither
shiftPressure(6, 10, 20, 12, invert, bottle);
// @ts-expect-error already absolute
excessToAbsolute(absolute);
// @ts-expect-error already excess
absoluteToExcess(excess);

const fill: Fill = {
  dose: sucrose,
  baseAlcoholVol: 10.5,
  yieldShare: 0.95,
  headspacePct: 3,
  dissolvedCo2GL: 0,
};
expectedPressure(fill, 10);
// @ts-expect-error a fill's dose is sucrose
expectedPressure({ ...fill, dose: invert }, 10);
// @ts-expect-error an expected pressure is excess, not absolute
dissolvedCo2(expectedPressure(fill, 10), 20, 12, invert);
