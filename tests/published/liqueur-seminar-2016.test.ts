/**
 * Bourgeois, seminar 2016 (read): 1 kg of sugar dissolved in 1 L of wine, at 0.63 L/kg, makes 1.63 L of 613.5 g/L.
 */
import { liqueurRecipe } from "../../src/cellar/sugar";
import { sucroseGL } from "../../src/cellar/units";
import { expectPrinted, expectRelative } from "../support/relative";

test("the printed example holds together", () => {
  expectPrinted(1000 / (1 + 0.63), "613.5", "read");
});

test("1.63 L of 613.5 g/L: 1 kg of sugar, and 0.5 % more wine than printed, for 0.625 is taken against 0.63", () => {
  const { sugarKg, carrierL } = liqueurRecipe(1.63, sucroseGL(613.5), sucroseGL(0));
  expectPrinted(sugarKg, "1.00", "read");
  expectPrinted(carrierL, "1.0", "read");
  // 1.63 − 0.625·1.63·0.6135 = 1.005, the size of the disagreement
  expectPrinted(carrierL, "1.005", "derived");
});

test("1 kg in 1 L by the module: 1.625 L of 615.4 g/L, 0.3 % from the printed example in volume and strength", () => {
  const strength = 1000 / 1.625;
  const { sugarKg, carrierL } = liqueurRecipe(1.625, sucroseGL(strength), sucroseGL(0));
  expectRelative(sugarKg, 1, 1e-14);
  expectRelative(carrierL, 1, 1e-14);
  expectRelative(strength, 613.5, 0.0032, "read");
  expectRelative(1.625, 1.63, 0.0032, "read");
});
