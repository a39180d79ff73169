/**
 * Every input of a batch plan, once: label, unit and range, what is assumed when it is left blank. The form, the
 * sheet's input cells and the batch file are all made from this table.
 */
import { domains, type Domain } from "../domains";
import { designations } from "../rules/designations";
import { ruleSetsOf } from "../rules/source";
import { LANGUAGES, sweetnessRules } from "../rules/sweetness-bands";
import { materialFields } from "./materials";
import { DEFAULT_BOTTLE_ML, DEFAULT_HEADSPACE_PCT, DEFAULT_YIELD, USUAL } from "../constants";
import { RACK_PLACES } from "../riddling";
import { actualFields, readingFields } from "./cellar-book";
import { choice, date, number, optional, text, type Values } from "./field-kinds";

/** A saturated sucrose solution holds some 890 g/L at 20 °C (memory), so no liqueur is stronger. */
const liqueurStrength: Domain = { ...domains.strengthGL, what: "strength of the liqueur", max: 900 };

const share = (what: string): Domain => ({ ...domains.percentBelow100, what });

export const fields = {
  batch: {
    name: text("Name of the batch", { maxLength: 60 }),
    lot: text("Lot", { maxLength: 60, blank: "" }),
    designation: choice(
      "Designation",
      designations.map((each) => each.name),
      { blank: "EU traditional method", note: "whose ageing minima apply" },
    ),
    rules: choice("Rules", ruleSetsOf(sweetnessRules), {
      blank: "EU",
      note: "whose sweetness terms and limits apply",
    }),
    language: choice("Language of the label", LANGUAGES, { blank: "en" }),
    bottle_mL: number("Bottle size", domains.bottleMl, { blank: DEFAULT_BOTTLE_ML }),
    bottlesPerCase: number("Bottles per case", domains.bottlesPerCase, { blank: 6 }),
    tirageDate: date("Tirage date"),
    currency: text("Currency", {
      maxLength: 8,
      blank: "EUR",
      note: "a word for the money columns; nothing is converted",
    }),
  },
  baseWine: {
    volume_hL: number("Base wine", domains.volumeHl),
    alcohol_vol: number("Alcohol", domains.baseAlcoholVol),
    sugar_gL: number("Glucose + fructose", domains.wineSugarGL, {
      note: "g/L as analysed; is it really dry?",
    }),
    dissolvedCO2_gL: number("Dissolved CO2", domains.dissolvedCo2GL, { blank: 0 }),
    totalSO2_mgL: optional("Total SO2", domains.sulfurDioxideMgL),
    acidity_gL: optional("Total acidity, as tartaric acid", domains.acidityGL, {
      note: "for the energy on the label",
    }),
    dryness: text("Note on dryness", { maxLength: 200, blank: "" }),
  },
  tirage: {
    goal: choice("Set the tirage by", ["pressure", "dose"] as const, { blank: "pressure" }),
    pressure_bar: optional("Excess pressure wanted", domains.pressureBar, { note: "by pressure only" }),
    pressureAt_C: optional("Temperature of that pressure", domains.temperatureC, {
      note: "a pressure means nothing without its temperature",
    }),
    dose_gL: optional("Dose wanted", domains.doseGL, {
      note: "by dose only; fermentable sugar in the filled bottle",
    }),
    sugarForm: choice("Sugar comes as", ["dry sugar", "liqueur"] as const, { blank: "dry sugar" }),
    liqueur_gL: optional("Strength of the tirage liqueur", liqueurStrength, {
      note: "as sucrose; liqueur only",
    }),
    yield: number("CO2 yield", domains.yieldShare, {
      blank: DEFAULT_YIELD,
      note: "share of the full CO2 really obtained (memory)",
    }),
    headspace_pct: number("Headspace under the cap", domains.headspacePct, {
      blank: DEFAULT_HEADSPACE_PCT,
      note: "25 mL over 750 mL",
    }),
    yeast_gHL: optional("Dry yeast", domains.rateGHl, { note: "supplier's sheet" }),
    starterTarget_Mcells_mL: optional("Live cells wanted in the wine", domains.millionCells, {
      note: "1 to 3 million/mL is usual",
    }),
    starter_Mcells_mL: optional("Live cells in the starter", domains.millionCells, {
      note: "blank: no starter volume is counted",
    }),
    nutrient_gHL: optional("Nutrient", domains.rateGHl, { note: "supplier's sheet" }),
    riddlingAid_gHL: optional("Riddling aid", domains.rateGHl, { note: "supplier's sheet" }),
    loss_pct: number("Wine lost at filling", share("loss"), { blank: 0 }),
    cellar_C: number("Cellar temperature", domains.temperatureC, { blank: 12 }),
    hottest_C: number("Hottest temperature in storage", domains.temperatureC, {
      note: "the worst day until release",
    }),
    glassRating_bar: optional("Glass maker's rating of the bottle", domains.bottleRatingBar, {
      note: "from the maker's own sheet; blank is never fine",
    }),
  },
  lees: {
    lees_months: number("On the lees", domains.wholeMonths, { note: "tirage to disgorging" }),
    rest_months: number("Rest after disgorging", domains.wholeMonths, { blank: 3 }),
  },
  readings: readingFields,
  riddling: {
    places: number("Places in a rack or cage", domains.places, {
      blank: RACK_PLACES,
      note: "rack 120, cage 504 (published practice)",
    }),
    days: number("Days of riddling", domains.riddlingDays, { blank: USUAL.riddlingDays }),
    turnsPerDay: number("Turns a day", domains.turnsPerDay, { blank: USUAL.turnsPerDay }),
    bottlesPerHour: optional("Bottles that one person turns in an hour", domains.bottlesPerHour, {
      note: "blank: hours are not worked out",
    }),
    wait_days: number("From the last turn to disgorging", domains.waitDays, {
      blank: USUAL.riddledWaitDays,
      note: "common practice, no source",
    }),
  },
  disgorging: {
    filled_mL: optional("Filled at tirage", domains.partOfBottleMl, { note: "blank: the bottle size" }),
    lost_mL: number("Wine lost at disgorging", domains.partOfBottleMl),
    pressureLost_bar: number(
      "Pressure lost at disgorging",
      { ...domains.pressureBar, min: 0, what: "pressure lost" },
      { blank: 1, note: "at 20 °C; about 1 bar is usual" },
    ),
    neckBath_C: number("Neck bath", domains.neckBathC, { blank: -25 }),
  },
  dosage: {
    kind: choice("Dosage", ["sugar in wine", "concentrate", "sweet reserve wine", "none"] as const, {
      blank: "sugar in wine",
    }),
    residual_gL: number("Sugar left after the second fermentation", domains.wineSugarGL, {
      note: "glucose + fructose, as analysed",
    }),
    target_gL: optional("Sweetness wanted", domains.wineSugarGL, {
      note: "glucose + fructose, as it will be analysed",
    }),
    strength_gL: optional("Strength of the liqueur", liqueurStrength, {
      note: "sugar in wine: as weighed sucrose; others: glucose + fructose",
    }),
    liqueur_vol: optional("Alcohol of the liqueur or its wine", domains.alcoholVol, {
      note: "sugar in wine: of the wine it is dissolved in",
    }),
    carrier_gL: number("Sugar of the wine used for it", domains.wineSugarGL, {
      blank: 0,
      note: "sugar in wine only; glucose + fructose",
    }),
    stock_L: optional("Stock of the liqueur", domains.volumeL, { note: "blank: as much as needed" }),
    reserve_pct: number(
      "Reserve to prepare",
      { ...domains.percentBelow100, what: "reserve" },
      { blank: USUAL.reservePct },
    ),
    term: text("Sweetness term wanted", { maxLength: 40, blank: "" }),
    label_vol: optional("Alcohol on the label", domains.alcoholVol, { note: "blank: the nearest half unit" }),
  },
  materials: materialFields,
  costs: {
    baseWine_perL: optional("Base wine", domains.money, { unit: "a litre" }),
    labour_perHour: optional("Labour", domains.money, { unit: "an hour" }),
    tirage_hours: number("Hours at tirage", domains.hours, { blank: 0 }),
    riddling_hours: optional("Hours at riddling", domains.hours, {
      note: "blank: as worked out under Riddling",
    }),
    disgorging_hours: number("Hours at disgorging and dosage", domains.hours, { blank: 0 }),
    finishing_hours: number("Hours at labelling and packing", domains.hours, { blank: 0 }),
    duty_perBottle: number("Duty by bottle", domains.money, { blank: 0, unit: "a bottle" }),
    duty_perL: number("Duty by volume", domains.money, { blank: 0, unit: "a litre" }),
    storage_perBottleMonth: number("Storage", domains.money, { blank: 0, unit: "a bottle and month" }),
    interest_pct: number("Money tied up", domains.percent, { blank: 0, unit: "% a year" }),
    breakage_pct: number("Breakage", share("breakage"), { blank: 1, note: "of the bottles filled" }),
    heldBack_bottles: number("Stock held back, not for sale", domains.bottles, {
      blank: 0,
      note: "library, samples; those sold pay for them",
    }),
    decimals: number("Amounts are rounded to", domains.decimals, {
      blank: USUAL.moneyDecimals,
      note: "each amount by itself, then added",
    }),
  },
  actual: actualFields,
} as const;

export type BatchInputs = Values<typeof fields>;

export const sectionTitles: Readonly<Record<keyof typeof fields, string>> = {
  batch: "Batch",
  baseWine: "Base wine",
  tirage: "Tirage",
  lees: "On the lees",
  readings: "Pressure readings",
  riddling: "Riddling",
  disgorging: "Disgorging",
  dosage: "Dosage",
  materials: "Materials",
  costs: "Costs",
  actual: "Actual",
};
