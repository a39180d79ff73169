/**
 * DISGORGING workings.
 */
import { FREEZING_SURE_VOL, freezingPointC, litreOfWine, spaceMl } from "../cellar/disgorging";
import { domains } from "../cellar/domains";
import { invertGL } from "../cellar/units";
import { explainer } from "./notebook";
import { ARITHMETIC, FREEZING, NECK_BATH_CARE } from "./sources";

export const disgorging = {
  "DISGORGING.FREEZING": explainer("alcohol_vol sugar_gL", (on) => {
    const alcohol = on.number("alcohol_vol", domains.alcoholVol, "[A] Alcohol of the wine");
    const sugar = invertGL(
      on.optional("sugar_gL", domains.strengthGL, "[S] Glucose + fructose in the wine", 0, "g/L"),
    );
    const result = freezingPointC(alcohol, sugar);
    const { ethanolMol, sugarMol, waterKg } = litreOfWine(alcohol, sugar);
    on.step("1 % vol is 10 mL a litre. Alcohol in a litre of wine", "n1 = A·10·ρe/Me", ethanolMol, "mol");
    on.step("Sugar in it", "n2 = S/Mh", sugarMol, "mol");
    on.step("Water, all that is neither alcohol nor sugar", "w = (1000 − A·10 − S·d)·ρw/1000", waterKg, "kg");
    on.step("Both lower the freezing point of the water", "t = −Kf·(n1 + n2)/w", result, "°C");
    const { min, max } = FREEZING_SURE_VOL;
    const beyond = alcohol < min || alcohol > max;
    return {
      result,
      unit: "°C, an estimate",
      sources: [FREEZING],
      cautions: [NECK_BATH_CARE, ...(beyond ? [`The estimate is good for ${min} to ${max} % vol.`] : [])],
    };
  }),

  "DISGORGING.SPACE": explainer("filled_mL lost_mL bottle_mL", (on) => {
    const filled = on.number("filled_mL", domains.partOfBottleMl, "[f] Wine filled at tirage");
    const lost = on.number("lost_mL", domains.partOfBottleMl, "[l] Wine lost at disgorging");
    const bottle = on.number("bottle_mL", domains.bottleMl, "[Vb] Fill wanted in the finished bottle");
    const result = spaceMl(filled, lost, bottle);
    on.step("What is left after disgorging, taken from the fill wanted", "r = Vb − (f − l)", result, "mL");
    return { result, unit: "mL of room", sources: [ARITHMETIC] };
  }),
};
