/**
 * Ageing minima by designation, months: on the lees (tirage to disgorging) and in all (tirage to release).
 * Mostly read in trade bodies' pages, so marked secondary.
 */
import { matcher } from "../matching";
import { source, type Source } from "./source";

export interface Designation {
  readonly name: string;
  readonly leesMonths: number;
  readonly totalMonths: number;
  readonly source: Source;
}

const designation = (name: string, leesMonths: number, totalMonths: number, from: Source): Designation => ({
  name,
  leesMonths,
  totalMonths,
  source: from,
});

const EU_TEXT = source("Delegated Regulation (EU) 2019/934 annex II", "secondary");
const TRADE_BODY = (which: string) => source(`pages of the ${which} trade body`, "secondary");
const CHAMPAGNE = TRADE_BODY("Champagne");
const CAVA = TRADE_BODY("Cava");
const FRANCIACORTA = TRADE_BODY("Franciacorta");
const TRENTO = TRADE_BODY("Trento");

export const designations: readonly Designation[] = [
  designation("EU traditional method", 9, 9, EU_TEXT),
  designation("Champagne non-vintage", 12, 15, CHAMPAGNE),
  designation("Champagne vintage", 12, 36, CHAMPAGNE),
  designation("Crémant", 9, 12, TRADE_BODY("crémant")),
  designation("Cava", 9, 9, CAVA),
  designation("Cava Reserva", 18, 18, CAVA),
  designation("Cava Gran Reserva", 30, 30, CAVA),
  designation("Cava Paraje", 36, 36, CAVA),
  designation("Franciacorta", 18, 18, FRANCIACORTA),
  designation("Franciacorta Satèn", 24, 24, FRANCIACORTA),
  designation("Franciacorta Rosé", 24, 24, FRANCIACORTA),
  designation("Franciacorta Millesimato", 30, 30, FRANCIACORTA),
  designation("Franciacorta Riserva", 60, 60, FRANCIACORTA),
  designation("Trento", 15, 15, TRENTO),
  designation("Trento Millesimato", 24, 24, TRENTO),
  designation("Trento Riserva", 36, 36, TRENTO),
  designation(
    "Cap Classique",
    12,
    12,
    source("pages of the Cap Classique trade body; from vintage 2023", "secondary"),
  ),
  designation("Sekt b.A.", 9, 9, source("German wine law, bottle-fermented Sekt b.A.", "memory")),
];

/** The designation of this name, or a refusal that lists what is known. */
export const designationNamed = matcher(designations, (each) => [each.name]);
