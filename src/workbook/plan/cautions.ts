/**
 * Section Cautions: on every plan.
 */
import { PLAN_LANGUAGE } from "./read";
import { heading, paragraph, text, type Section } from "./rows";

export const CAUTIONS = [
  "Glass under pressure: compare the high pressure on the hottest day with the glass maker's own rating of this very bottle, new or used as the maker says. This plan gives no rating.",
  "Wear face and hand protection whenever filled bottles are moved, turned, chilled or opened; keep others away; a bottle that was dropped or scratched is not used.",
  "CO2 collects in cellars, pits and tanks and kills without warning: ventilate, wear a CO2 alarm (workplace limits: 5,000 ppm over 8 hours, 30,000 ppm for a short time; NIOSH and ACGIH), never work alone.",
  "Neck baths are below −20 °C and their liquids can be harmful: gloves, eye protection, ventilation, the supplier's safety sheet.",
  "The figures are estimates from published equations and from what was typed in. Measure the sugar before filling and the pressure afterwards. Local law, the designation's text and a licensed oenologist decide.",
];

export const cautionsSection: Section = () => [
  ...heading("Cautions"),
  ...CAUTIONS.map((caution) => paragraph(`•  ${caution}`, "caution")),
  {
    cells: [
      text("Language", "label"),
      { value: "en", style: "label", name: PLAN_LANGUAGE },
      text("", "unit"),
      text("of this sheet", "note"),
    ],
  },
];
