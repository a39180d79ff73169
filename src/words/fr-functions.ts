/**
 * French for what the functions say of themselves, in functions.json and on their help pages. Keys are the English
 * texts of the doc comments and of src/help.
 */
import type { Catalogue } from "./translate";

export const frFunctions: Catalogue = {
  // descriptions of the functions
  "Every designation known, a row for each: name, months on the lees, months in all, source.":
    "Toutes les appellations connues, une ligne pour chacune : nom, mois sur lies, mois en tout, source.",
  "Earliest date that a designation allows, by the last-day rule: same day of the last month, or its last day.":
    "Première date qu'une appellation permet, selon la règle du dernier jour : le même jour du dernier mois, ou le dernier jour de celui-ci.",
  "Months that a designation asks for, on the lees or in all.":
    "Mois qu'une appellation exige, sur lies ou en tout.",
  "Cost of a saleable bottle: those that remain pay for those that break.":
    "Coût d'une bouteille vendable : celles qui restent paient pour celles qui cassent.",
  "Interest on money tied up, compounded.": "Intérêts composés de l'argent immobilisé.",
  "Whole packs to order for a need and a reserve.":
    "Conditionnements entiers à commander pour un besoin et une réserve.",
  "Estimated freezing point of the wine, °C; the neck bath must be well below it.":
    "Point de congélation estimé du vin, °C ; le bac à glace doit être nettement plus froid.",
  "Room in the neck after disgorging, mL, for liqueur and wine.":
    "Place dans le col après dégorgement, mL, pour la liqueur et le vin.",
  "Alcohol after dosage, % vol.": "Alcool après dosage, % vol.",
  "Litres of liqueur to prepare for a batch, with a reserve.":
    "Litres de liqueur à préparer pour un lot, avec une réserve.",
  "Share of the stronger of two wines or liqueurs that gives the strength wanted. All strengths on one basis.":
    "Part du plus fort de deux vins ou liqueurs qui donne la richesse voulue. Toutes les richesses sur une même base.",
  "Kilograms of sugar and litres of carrier wine for a liqueur, in one row. Both strengths as sucrose.":
    "Kilogrammes de sucre et litres de vin porteur pour une liqueur, sur une ligne. Les deux richesses en saccharose.",
  "Whole bottles that a limited stock of liqueur or sweet reserve wine can dose. All strengths on one basis.":
    "Bouteilles entières qu'un stock limité de liqueur ou de vin de réserve doux permet de doser. Toutes les richesses sur une même base.",
  "Sugar reached by a volume of liqueur, g/L. Both strengths on one basis, sucrose or glucose + fructose.":
    "Sucre atteint avec un volume de liqueur, g/L. Les deux richesses sur une même base, saccharose ou glucose + fructose.",
  "Millilitres of wine to top up with, once the liqueur is in.":
    "Millilitres de vin pour compléter, une fois la liqueur ajoutée.",
  "Bench trial, a row for each target: target, mL a bottle, mL in a 100 mL glass, driest permitted EU term. Glucose + fructose throughout.":
    "Essai de dosage, une ligne par cible : cible, mL par bouteille, mL dans un verre de 100 mL, mention UE la plus sèche permise. Glucose + fructose partout.",
  "Millilitres of liqueur in each bottle for the sweetness wanted. All strengths on one basis, sucrose or glucose + fructose.":
    "Millilitres de liqueur par bouteille pour la teneur en sucre voulue. Toutes les richesses sur une même base, saccharose ou glucose + fructose.",
  "Alcohol for the label, nearest whole or half unit.":
    "Alcool sur l'étiquette, à l'unité ou la demi-unité la plus proche.",
  'Whether the alcohol on the label agrees with the analysis: "within tolerance" or "outside tolerance".':
    "Dit si l'alcool sur l'étiquette s'accorde avec l'analyse : \"within tolerance\" (dans la tolérance) ou \"outside tolerance\" (hors tolérance).",
  "Energy of 100 mL, unrounded. kJ and kcal come from separate factors.":
    "Énergie de 100 mL, non arrondie. kJ et kcal viennent de facteurs distincts.",
  "Millilitres by which one bottle of a batch may be filled below its nominal volume.":
    "Millilitres qui peuvent manquer au volume nominal d'une bouteille du lot.",
  "Excess pressure at 20 °C, bar, from a reading at another temperature, by the official method's table.":
    "Surpression à 20 °C, bar, d'après un relevé à une autre température, par la table de la méthode officielle.",
  'The regulated class of an excess pressure at 20 °C, or "between classes".':
    'Classe réglementaire d\'une surpression à 20 °C, ou "between classes" (entre deux classes).',
  "Dissolved CO2, g/L, at equilibrium with an excess pressure of CO2 alone.":
    "CO2 dissous, g/L, à l'équilibre avec une surpression de CO2 seul.",
  'A pressure in another unit or on the other scale. Units bar, kPa, atm, psi, kgf/cm2; with " abs" after it, absolute.':
    'Une pression dans une autre unité ou sur l\'autre échelle. Unités bar, kPa, atm, psi, kgf/cm2 ; suivies de " abs", absolues.',
  "Excess pressure, bar, of CO2 alone at equilibrium with this much dissolved: the inverse of PRESSURE.CO2.":
    "Surpression, bar, de CO2 seul à l'équilibre avec la quantité dissoute : l'inverse de PRESSURE.CO2.",
  "Excess pressure of the same closed bottle at another temperature, bar, by physics: the CO2 in it stays.":
    "Surpression de la même bouteille fermée à une autre température, bar, par la physique : le CO2 y reste.",
  "Labour for riddling, hours.": "Main-d'œuvre du remuage, heures.",
  "Racks needed for so many bottles.": "Pupitres nécessaires pour ce nombre de bouteilles.",
  "Riddling by hand, a row for each turn: date, turn, eighths of a turn, where the mark stands, angle of the rack.":
    "Remuage à la main, une ligne par tour : date, tour, huitièmes de tour, position du repère, angle du pupitre.",
  "°Brix of a sucrose solution from its strength at 20 °C: the inverse of SUGAR.STRENGTH.":
    "°Brix d'une solution de saccharose d'après sa richesse à 20 °C : l'inverse de SUGAR.STRENGTH.",
  "Density of a sucrose solution at 20 °C, kg/m³. Not for must, whose extract is not all sugar.":
    "Masse volumique d'une solution de saccharose à 20 °C, kg/m³. Pas pour le moût, dont l'extrait n'est pas que du sucre.",
  "The glucose + fructose that weighed sucrose becomes: grams, or g/L.":
    "Glucose + fructose que donne le saccharose pesé : grammes, ou g/L.",
  "Strength of a sucrose solution, g/L at 20 °C, from its °Brix. Not for must, whose extract is not all sugar.":
    "Richesse d'une solution de saccharose, g/L à 20 °C, d'après son °Brix. Pas pour le moût, dont l'extrait n'est pas que du sucre.",
  "The sucrose that makes this much glucose + fructose: grams, or g/L.":
    "Saccharose qui donne cette quantité de glucose + fructose : grammes, ou g/L.",
  'Whether a term fits a sugar content: "permitted", "within tolerance" or "not permitted".':
    'Dit si une mention convient à une teneur en sucre : "permitted" (permise), "within tolerance" (dans la tolérance) ou "not permitted" (non permise).',
  "The bounds of a sweetness term in a row: lowest and highest sugar, g/L; an empty text where it is open.":
    "Bornes d'une mention sur une ligne : sucre le plus bas et le plus haut, g/L ; un texte vide du côté ouvert.",
  "How far a sugar content lies from the nearer bound of a term, g/L; zero at a bound, negative outside.":
    "Écart entre une teneur en sucre et la borne la plus proche d'une mention, g/L ; zéro sur une borne, négatif en dehors.",
  "The driest sweetness term that a sugar content permits.":
    "Mention la plus sèche qu'une teneur en sucre permet.",
  "Every sweetness term that a sugar content permits, driest first, in a row. Only one may be used.":
    "Toutes les mentions qu'une teneur en sucre permet, la plus sèche d'abord, sur une ligne. Une seule peut être employée.",
  "Alcohol after the second fermentation, % vol, with the dilution by the added sugar's own volume.":
    "Alcool après la seconde fermentation, % vol, avec la dilution par le volume propre du sucre ajouté.",
  "Whole bottles filled from a volume; a rest that does not fill a bottle is not counted.":
    "Bouteilles entières remplies à partir d'un volume ; un reste qui ne remplit pas une bouteille n'est pas compté.",
  "Expected excess pressure against temperature, a row for each step, to chart.":
    "Surpression attendue selon la température, une ligne par pas, pour un graphique.",
  "Dose, g/L as sucrose, that gives an excess pressure at a temperature: the exact inverse of TIRAGE.PRESSURE.":
    "Dose, g/L en saccharose, qui donne une surpression à une température : l'inverse exact de TIRAGE.PRESSURE.",
  "Litres of tirage liqueur (sugar dissolved in wine) to mix into the base wine for the dose wanted.":
    "Litres de liqueur de tirage (sucre dissous dans du vin) à mélanger au vin de base pour la dose voulue.",
  "Expected excess pressure under the crown cap, bar, when the dose has fermented out. Always at a temperature.":
    "Surpression attendue sous la capsule-couronne, bar, quand la dose a entièrement fermenté. Toujours à une température.",
  "Share of the dose that has fermented so far, 0 to 1, from a pressure reading.":
    "Part de la dose fermentée jusqu'ici, 0 à 1, d'après un relevé de pression.",
  "Where 95 % of the bottles lie: lowest, expected and highest excess pressure, bar, in one row.":
    "Où se trouvent 95 % des bouteilles : surpression basse, attendue et haute, bar, sur une ligne.",
  "Litres of yeast starter so that the wine holds the live cells wanted.":
    "Litres de levain pour que le vin contienne les cellules vivantes voulues.",
  "Kilograms of sucrose to weigh and dissolve in the base wine for the dose wanted; the sugar's own volume is accounted for.":
    "Kilogrammes de saccharose à peser et à dissoudre dans le vin de base pour la dose voulue ; le volume propre du sucre est pris en compte.",
  "Hectolitres to put in bottles: base wine, sugar or liqueur, and yeast starter. The starter is counted as wine of the same sugar.":
    "Hectolitres à mettre en bouteilles : vin de base, sucre ou liqueur, et levain. Le levain compte comme du vin de même sucre.",
  "The CO2 yield that explains a reading on a finished fermentation: your own figure for the next plan.":
    "Rendement en CO2 qui explique un relevé sur une fermentation finie : votre propre chiffre pour le prochain plan.",

  // descriptions of the arguments
  "Tirage date, a spreadsheet date (1 March 1900 to 31 December 9999); a time of day is dropped.":
    "Date du tirage, une date de tableur (1er mars 1900 au 31 décembre 9999) ; l'heure est ignorée.",
  'The designation, as "Crémant" or "Cava Reserva"; AGEING.DESIGNATIONS lists them.':
    'L\'appellation, comme "Crémant" ou "Cava Reserva" ; AGEING.DESIGNATIONS en donne la liste.',
  '"lees" (tirage to disgorging) or "total" (tirage to release); blank = "lees".':
    '"lees" (sur lies, du tirage au dégorgement) ou "total" (du tirage à la mise en vente) ; vide = "lees".',
  "Cost of the batch, money (0 to 1000000000000).": "Coût du lot, en monnaie (0 à 1000000000000).",
  "Bottles filled (a whole number, 0 to 100000000).": "Bouteilles remplies (nombre entier, 0 à 100000000).",
  "Breakage, % (0 to less than 100); blank = 0.": "Casse, % (0 à moins de 100) ; vide = 0.",
  "Money tied up (0 to 1000000000000).": "Argent immobilisé (0 à 1000000000000).",
  "For how long, months (0 to 600).": "Pendant combien de temps, mois (0 à 600).",
  "At this rate, % a year (0 to 100).": "À ce taux, % par an (0 à 100).",
  "Quantity needed (0 to 1000000000000).": "Quantité nécessaire (0 à 1000000000000).",
  "Quantity in a pack (more than 0, at most 1000000000).":
    "Quantité par conditionnement (plus de 0, au plus 1000000000).",
  "Reserve, % (0 to less than 100); blank = 0.": "Réserve, % (0 à moins de 100) ; vide = 0.",
  "Alcohol of the wine, % vol (0 to 20).": "Alcool du vin, % vol (0 à 20).",
  "Glucose + fructose in the wine, g/L (0 to 1000); blank = 0.":
    "Glucose + fructose du vin, g/L (0 à 1000) ; vide = 0.",
  "Wine filled at tirage, mL (0 to 30000).": "Vin mis en bouteille au tirage, mL (0 à 30000).",
  "Wine lost at disgorging, mL (0 to 30000).": "Vin perdu au dégorgement, mL (0 à 30000).",
  "Fill wanted in the finished bottle, mL (50 to 30000).":
    "Remplissage voulu de la bouteille finie, mL (50 à 30000).",
  "Wine in the finished bottle, mL (50 to 30000).": "Vin dans la bouteille finie, mL (50 à 30000).",
  "Liqueur in the bottle, mL (0 to 30000).": "Liqueur dans la bouteille, mL (0 à 30000).",
  "Alcohol of the liqueur, % vol (0 to 20).": "Alcool de la liqueur, % vol (0 à 20).",
  "Bottles to dose (a whole number, 0 to 100000000).": "Bouteilles à doser (nombre entier, 0 à 100000000).",
  "Liqueur in each, mL (0 to 30000).": "Liqueur dans chacune, mL (0 à 30000).",
  "Reserve, % (0 to less than 100); blank = 5. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.":
    "Réserve, % (0 à moins de 100) ; vide = 5. Une cellule vide peut arriver comme 0, et 0 est gardé : omettre plutôt l'argument.",
  "Sugar of the weaker, g/L (0 to 1000).": "Sucre du plus faible, g/L (0 à 1000).",
  "Sugar of the stronger, g/L (0 to 1000), more than the weaker.":
    "Sucre du plus fort, g/L (0 à 1000), plus que le plus faible.",
  "Sugar wanted, g/L (0 to 1000), between the two.": "Sucre voulu, g/L (0 à 1000), entre les deux.",
  "Liqueur wanted, L (0 to 10000000).": "Liqueur voulue, L (0 à 10000000).",
  "Its strength, g/L as sucrose (0 to 1000).": "Sa richesse, g/L en saccharose (0 à 1000).",
  "Sugar of the carrier wine, g/L as sucrose (0 to 1000); blank = 0.":
    "Sucre du vin porteur, g/L en saccharose (0 à 1000) ; vide = 0.",
  "Stock, L (0 to 10000000).": "Stock, L (0 à 10000000).",
  "Sugar of the wine, g/L (0 to 1000).": "Sucre du vin, g/L (0 à 1000).",
  "Sugar wanted, g/L (0 to 1000).": "Sucre voulu, g/L (0 à 1000).",
  "Sugar of the stock, g/L (0 to 1000); for a sweetness as analysed, 600 weighed are 631.6 (SUGAR.INVERT).":
    "Sucre du stock, g/L (0 à 1000) ; pour une teneur à l'analyse, 600 pesés font 631,6 (SUGAR.INVERT).",
  "Sugar of the liqueur, g/L (0 to 1000); for a sweetness as analysed, 600 weighed are 631.6 (SUGAR.INVERT).":
    "Sucre de la liqueur, g/L (0 à 1000) ; pour une teneur à l'analyse, 600 pesés font 631,6 (SUGAR.INVERT).",
  "Room in the neck, mL (0 to 30000).": "Place dans le col, mL (0 à 30000).",
  "Sugar of the wine, g/L of glucose + fructose (0 to 1000).":
    "Sucre du vin, g/L de glucose + fructose (0 à 1000).",
  "Sugar of the liqueur, g/L of glucose + fructose (0 to 1000).":
    "Sucre de la liqueur, g/L de glucose + fructose (0 à 1000).",
  "A range of sweetness to try, g/L of glucose + fructose (0 to 1000 each); blank cells are left out, or tried as 0 where Excel makes them 0.":
    "Plage de teneurs en sucre à essayer, g/L de glucose + fructose (0 à 1000 chacune) ; les cellules vides sont omises, ou essayées comme 0 là où Excel en fait 0.",
  "Room in the neck, mL (0 to 30000); blank = no check. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.":
    "Place dans le col, mL (0 à 30000) ; vide = pas de contrôle. Une cellule vide peut arriver comme 0, et 0 est gardé : omettre plutôt l'argument.",
  "Alcohol on the label, % vol (0 to 20).": "Alcool sur l'étiquette, % vol (0 à 20).",
  "Alcohol measured, % vol (0 to 20).": "Alcool mesuré, % vol (0 à 20).",
  'Whose tolerance, "EU" or "US"; blank = "EU". The US figure holds up to 14 % vol.':
    'Tolérance de qui, "EU" (Union européenne) ou "US" (États-Unis) ; vide = "EU". Le chiffre US vaut jusqu\'à 14 % vol.',
  "Sugar, g/L (0 to 1000).": "Sucre, g/L (0 à 1000).",
  "Organic acids, g/L (0 to 30); blank = 0.": "Acides organiques, g/L (0 à 30) ; vide = 0.",
  "Glycerol, g/L (0 to 1000); blank = 0.": "Glycérol, g/L (0 à 1000) ; vide = 0.",
  '"kJ" or "kcal"; blank = "kJ".': '"kJ" ou "kcal" ; vide = "kJ".',
  "Nominal volume, mL (50 to 30000).": "Volume nominal, mL (50 à 30000).",
  "Excess pressure read, bar (-1 to 20).": "Surpression lue, bar (-1 à 20).",
  "Temperature of the bottle at the reading, °C (0 to 25).":
    "Température de la bouteille au relevé, °C (0 à 25).",
  "Excess pressure at 20 °C, bar (-1 to 20).": "Surpression à 20 °C, bar (-1 à 20).",
  "Bottle size, mL (50 to 30000); blank = 750.": "Contenance de la bouteille, mL (50 à 30000) ; vide = 750.",
  'Whose classes: EU, OIV, US, AU or CA-QC; blank = "EU". US, AU and CA-QC count CO2 or absolute pressure, worked out for a dry wine of 12 % vol.':
    'Classes de qui : EU, OIV, US, AU ou CA-QC ; vide = "EU". US, AU et CA-QC comptent le CO2 ou la pression absolue, calculés pour un vin sec de 12 % vol.',
  "Excess pressure, bar (-1 to 20).": "Surpression, bar (-1 à 20).",
  "Temperature of the wine, °C (-5 to 45).": "Température du vin, °C (-5 à 45).",
  "Glucose + fructose in the wine, g/L (0 to 300); blank = 0.":
    "Glucose + fructose du vin, g/L (0 à 300) ; vide = 0.",
  "Pressure in the first unit (-1000000 to 1000000), not below vacuum.":
    "Pression dans la première unité (-1000000 à 1000000), pas au-dessous du vide.",
  'Its unit: bar, kPa, atm, psi or kgf/cm2; "bar abs" for absolute.':
    'Son unité : bar, kPa, atm, psi ou kgf/cm2 ; "bar abs" pour l\'absolu.',
  "Unit wanted, in the same words.": "Unité voulue, avec les mêmes mots.",
  "Dissolved CO2, g/L (0 to 20).": "CO2 dissous, g/L (0 à 20).",
  "Temperature of that pressure, °C (-5 to 45).": "Température de cette pression, °C (-5 à 45).",
  "Temperature wanted, °C (-5 to 45).": "Température voulue, °C (-5 à 45).",
  "Alcohol of the wine in the bottle, % vol (0 to 20); blank = 12. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.":
    "Alcool du vin dans la bouteille, % vol (0 à 20) ; vide = 12. Une cellule vide peut arriver comme 0, et 0 est gardé : omettre plutôt l'argument.",
  "Glucose + fructose in the bottle, g/L (0 to 300); blank = 0.":
    "Glucose + fructose dans la bouteille, g/L (0 à 300) ; vide = 0.",
  "Headspace, % of the wine's volume (0.5 to 20); blank = 3.333.":
    "Espace de tête, % du volume du vin (0,5 à 20) ; vide = 3,333.",
  "Nitrogen in the headspace at 20 °C, bar (0 to 2); blank = 0, as after disgorging. Under a crown cap about 0.79.":
    "Azote dans l'espace de tête à 20 °C, bar (0 à 2) ; vide = 0, comme après dégorgement. Sous capsule-couronne environ 0,79.",
  "Bottles to riddle (a whole number, 0 to 100000000).":
    "Bouteilles à remuer (nombre entier, 0 à 100000000).",
  "Turns of each (a whole number, 0 to 10000).": "Tours de chacune (nombre entier, 0 à 10000).",
  "Bottles that one person turns in an hour (more than 0, at most 1000000).":
    "Bouteilles qu'une personne tourne en une heure (plus de 0, au plus 1000000).",
  "Places in a rack (a whole number, 1 to 100000); blank = 120. A cage holds 504.":
    "Places d'un pupitre (nombre entier, 1 à 100000) ; vide = 120. Une caisse en contient 504.",
  "Day of the first turn, a spreadsheet date (1 March 1900 to 31 December 9999); a time of day is dropped.":
    "Jour du premier tour, une date de tableur (1er mars 1900 au 31 décembre 9999) ; l'heure est ignorée.",
  "Days of riddling (a whole number, 4 to 60); blank = 14.":
    "Jours de remuage (nombre entier, 4 à 60) ; vide = 14.",
  "Turns a day (a whole number, 1 to 4); blank = 1.": "Tours par jour (nombre entier, 1 à 4) ; vide = 1.",
  "Strength, g/L as sucrose (0 to 1000); a solution of 85 °Brix has about 1232.":
    "Richesse, g/L en saccharose (0 à 1000) ; une solution à 85 °Brix en a environ 1232.",
  "g of sucrose in 100 g of solution, °Brix (0 to 85).":
    "g de saccharose dans 100 g de solution, °Brix (0 à 85).",
  "Sucrose, g or g/L (0 to 1000000000000).": "Saccharose, g ou g/L (0 à 1000000000000).",
  "Glucose + fructose, g or g/L (0 to 1000000000000).": "Glucose + fructose, g ou g/L (0 à 1000000000000).",
  "The term, in English, French, German, Italian, Spanish or Portuguese.":
    "La mention, en anglais, français, allemand, italien, espagnol ou portugais.",
  "Sugar as analysed, g/L of glucose + fructose (0 to 1000).":
    "Sucre à l'analyse, g/L de glucose + fructose (0 à 1000).",
  "Whether sugar was added after the second fermentation, TRUE or FALSE; blank = TRUE. 0 counts as blank. Give it outright: some programs make a blank cell FALSE.":
    "Si du sucre a été ajouté après la seconde fermentation, VRAI (TRUE) ou FAUX (FALSE) ; vide = VRAI. 0 compte comme vide. À donner expressément : certains programmes changent une cellule vide en FAUX.",
  'Whose terms, "EU" or "OIV"; blank = "EU".':
    'Mentions de qui, "EU" (Union européenne) ou "OIV" ; vide = "EU".',
  'Language of the term: en, fr, de, es, it or pt; blank = "en".':
    'Langue de la mention : en, fr, de, es, it ou pt ; vide = "en".',
  'Language of the terms: en, fr, de, es, it or pt; blank = "en".':
    'Langue des mentions : en, fr, de, es, it ou pt ; vide = "en".',
  "Alcohol of the base wine, % vol (5 to 16).": "Alcool du vin de base, % vol (5 à 16).",
  "Fermentable sugar in the filled bottle, g/L as sucrose (0 to 60).":
    "Sucre fermentescible dans la bouteille remplie, g/L en saccharose (0 à 60).",
  "Part of it already in the wine, g/L of glucose + fructose (0 to 1000); blank = 0.":
    "Part de ce sucre déjà dans le vin, g/L de glucose + fructose (0 à 1000) ; vide = 0.",
  "Volume to put in bottles, hL (more than 0, at most 100000).":
    "Volume à mettre en bouteilles, hL (plus de 0, au plus 100000).",
  "Wine lost at filling, % (0 to less than 100); blank = 0.":
    "Vin perdu à la mise en bouteille, % (0 à moins de 100) ; vide = 0.",
  "First temperature, °C (-5 to 45); blank = 0.": "Première température, °C (-5 à 45) ; vide = 0.",
  "Last temperature, °C (-5 to 45); blank = 30. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.":
    "Dernière température, °C (-5 à 45) ; vide = 30. Une cellule vide peut arriver comme 0, et 0 est gardé : omettre plutôt l'argument.",
  "Step, °C (more than 0, at most 50); blank = 5.": "Pas, °C (plus de 0, au plus 50) ; vide = 5.",
  "Share of the full CO2 really obtained (0.5 to 1); blank = 0.95.":
    "Part du CO2 total réellement obtenue (0,5 à 1) ; vide = 0,95.",
  "CO2 already in the base wine, g/L (0 to 5); blank = 0.":
    "CO2 déjà dans le vin de base, g/L (0 à 5) ; vide = 0.",
  "Excess pressure wanted, bar (-1 to 20).": "Surpression voulue, bar (-1 à 20).",
  "At this temperature, °C (-5 to 45).": "À cette température, °C (-5 à 45).",
  "Base wine in the tank, hL (more than 0, at most 100000).":
    "Vin de base en cuve, hL (plus de 0, au plus 100000).",
  "Fermentable sugar wanted in the filled bottle, g/L as sucrose (0 to 60).":
    "Sucre fermentescible voulu dans la bouteille remplie, g/L en saccharose (0 à 60).",
  "Strength of the liqueur, g/L as sucrose (0 to 1000), more than the dose.":
    "Richesse de la liqueur, g/L en saccharose (0 à 1000), plus que la dose.",
  "Glucose + fructose already in the wine, g/L (0 to 1000); blank = 0.":
    "Glucose + fructose déjà dans le vin, g/L (0 à 1000) ; vide = 0.",
  "Temperature of the bottle, °C (-5 to 45).": "Température de la bouteille, °C (-5 à 45).",
  "Temperature of the bottle at the reading, °C (-5 to 45).":
    "Température de la bouteille au relevé, °C (-5 à 45).",
  "Standard deviation of the dose, g/L (0 to 10); blank = 0.4. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.":
    "Écart-type de la dose, g/L (0 à 10) ; vide = 0,4. Une cellule vide peut arriver comme 0, et 0 est gardé : omettre plutôt l'argument.",
  "Standard deviation of the yield, share (0 to 0.2); blank = 0.02. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.":
    "Écart-type du rendement, part (0 à 0,2) ; vide = 0,02. Une cellule vide peut arriver comme 0, et 0 est gardé : omettre plutôt l'argument.",
  "Standard deviation of the temperature, °C (0 to 10); blank = 0.5. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.":
    "Écart-type de la température, °C (0 à 10) ; vide = 0,5. Une cellule vide peut arriver comme 0, et 0 est gardé : omettre plutôt l'argument.",
  "Standard deviation of the headspace, % of the wine (0 to 5); blank = 0.5. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.":
    "Écart-type de l'espace de tête, % du vin (0 à 5) ; vide = 0,5. Une cellule vide peut arriver comme 0, et 0 est gardé : omettre plutôt l'argument.",
  "Live cells wanted in the wine, million/mL (more than 0, at most 10000).":
    "Cellules vivantes voulues dans le vin, millions/mL (plus de 0, au plus 10000).",
  "Live cells in the starter, million/mL (more than 0, at most 10000), more than wanted.":
    "Cellules vivantes dans le levain, millions/mL (plus de 0, au plus 10000), plus que le nombre voulu.",
  "Strength of the tirage liqueur, g/L as sucrose (0 to 1000); blank = dry sugar.":
    "Richesse de la liqueur de tirage, g/L en saccharose (0 à 1000) ; vide = sucre sec.",
  "Yeast starter, L (0 to 10000000); blank = 0.": "Levain, L (0 à 10000000) ; vide = 0.",
  "Fermentable sugar in the filled bottle, g/L as sucrose (0 to 60), more than 0.":
    "Sucre fermentescible dans la bouteille remplie, g/L en saccharose (0 à 60), plus de 0.",

  // what they give
  "rows of four cells": "lignes de quatre cellules",
  "a spreadsheet date": "une date de tableur",
  months: "mois",
  "money a bottle, in the currency of the cost": "montant par bouteille, dans la monnaie du coût",
  "money, in the currency of the amount": "montant, dans la monnaie de la somme",
  "whole packs": "conditionnements entiers",
  "°C, an estimate for 8 to 15 % vol": "°C, une estimation pour 8 à 15 % vol",
  "mL of room": "mL de place",
  "L of liqueur": "L de liqueur",
  "share of the stronger, 0 to 1": "part du plus fort, 0 à 1",
  "two cells: kg of sugar, L of carrier": "deux cellules : kg de sucre, L de vin porteur",
  "whole bottles": "bouteilles entières",
  "mL of wine": "mL de vin",
  "rows of four cells; a target that cannot be reached says why in the last one":
    "lignes de quatre cellules ; une cible hors d'atteinte dit pourquoi dans la dernière",
  "mL a bottle": "mL par bouteille",
  "the verdict in words": "le verdict en mots",
  "kJ or kcal in 100 mL": "kJ ou kcal dans 100 mL",
  "bar above atmospheric at 20 °C": "bar au-dessus de la pression atmosphérique à 20 °C",
  "the class in words": "la classe en mots",
  "g/L of CO2": "g/L de CO2",
  "the pressure in the unit wanted": "la pression dans l'unité voulue",
  "bar above atmospheric; negative where the CO2 alone makes less than the atmosphere":
    "bar au-dessus de la pression atmosphérique ; négatif quand le CO2 seul fait moins que l'atmosphère",
  "bar above atmospheric": "bar au-dessus de la pression atmosphérique",
  hours: "heures",
  "whole racks": "pupitres entiers",
  "rows of five cells: date; turn number; eighths of a turn, clockwise positive; mark in eighths from six o'clock; rack angle °":
    "lignes de cinq cellules : date ; numéro du tour ; huitièmes de tour, positifs dans le sens horaire ; repère en huitièmes depuis six heures ; angle du pupitre en °",
  "g, or g/L, of glucose + fructose": "g, ou g/L, de glucose + fructose",
  "g/L as sucrose": "g/L en saccharose",
  "g, or g/L, of sucrose": "g, ou g/L, de saccharose",
  "two cells: lowest, highest, g/L": "deux cellules : le plus bas, le plus haut, g/L",
  "the term": "la mention",
  "one cell a term": "une cellule par mention",
  "rows of two cells: temperature °C, bar above atmospheric":
    "lignes de deux cellules : température °C, bar au-dessus de la pression atmosphérique",
  "share, 0 to 1": "part, 0 à 1",
  "three cells: low, expected, high, bar above atmospheric":
    "trois cellules : bas, attendu, haut, bar au-dessus de la pression atmosphérique",
  "L of starter": "L de levain",
  "kg of sucrose": "kg de saccharose",
  "hL to put in bottles": "hL à mettre en bouteilles",
  "share, 0.5 to 1": "part, 0,5 à 1",

  // equations with words in them; those of signs alone are the same everywhere
  "the table itself": "la table elle-même",
  "tirage date + minimum months": "date du tirage + mois minimaux",
  "table look-up": "lecture dans la table",
  "total/(filled·(1 − breakage/100))": "total/(remplies·(1 − casse/100))",
  "amount·((1 + r/100)^(months/12) − 1)": "somme·((1 + r/100)^(mois/12) − 1)",
  "needed·(1 + reserve/100)/pack, rounded up":
    "besoin·(1 + réserve/100)/conditionnement, arrondi à l'entier supérieur",
  "−1.86 × mol of ethanol and sugar per kg of water": "−1.86 × mol d'éthanol et de sucre par kg d'eau",
  "bottle − (filled − lost)": "bouteille − (rempli − perdu)",
  "bottles·mL/1000·(1 + reserve/100)": "bouteilles·mL/1000·(1 + réserve/100)",
  "m = V·(L − c)/(1000 − c·d), carrier = V − m·d, d = 0.625 L/kg":
    "m = V·(L − c)/(1000 − c·d), vin porteur = V − m·d, d = 0.625 L/kg",
  "stock·1000/v, v as DOSAGE.VOLUME, rounded down":
    "stock·1000/v, v comme DOSAGE.VOLUME, arrondi à l'entier inférieur",
  "space − liqueur": "place − liqueur",
  "v = Vb·(St − Sw)/(L − Sw), the glass in proportion": "v = Vb·(St − Sw)/(L − Sw), le verre en proportion",
  "rounded to the nearest 0.5": "arrondi au 0,5 le plus proche",
  "|label − measured| at most the tolerance: EU 0.8 % vol for sparkling wine, US 1.5 % vol":
    "|étiquette − mesuré| au plus la tolérance : EU 0,8 % vol pour un vin effervescent, US 1,5 % vol",
  "A·0.78924·29 + (sugar·17 + acid·13 + glycerol·10)/10 for kJ; 7, 4, 3, 2.4 for kcal":
    "A·0.78924·29 + (sucre·17 + acides·13 + glycérol·10)/10 pour kJ ; 7, 4, 3, 2.4 pour kcal",
  "to 50 mL 9 %, to 100 4.5 mL, to 200 4.5 %, to 300 9 mL, to 500 3 %, to 1000 15 mL, to 10000 1.5 %, to 15000 150 mL, above 1 %; percentages rounded up to 0.1 mL":
    "jusqu'à 50 mL 9 %, à 100 4,5 mL, à 200 4,5 %, à 300 9 mL, à 500 3 %, à 1000 15 mL, à 10000 1,5 %, à 15000 150 mL, au-delà 1 % ; pourcentages arrondis au 0,1 mL supérieur",
  "reading × table ratio, linear between whole degrees":
    "relevé × rapport de la table, linéaire entre degrés entiers",
  "the first class whose bounds hold": "la première classe dont les bornes conviennent",
  "gauge = absolute − 1.01325 bar": "relative = absolue − 1.01325 bar",
  "c = p·(kH + h·529.31/T) kept from one temperature to the other":
    "c = p·(kH + h·529.31/T) gardé d'une température à l'autre",
  "bottles·turns/rate": "bouteilles·tours/cadence",
  "bottles/places, rounded up": "bouteilles/places, arrondi à l'entier supérieur",
  "an eighth one way, then a quarter the other way and back; the rack from 15° to 75° in equal steps":
    "un huitième dans un sens, puis un quart dans l'autre et retour ; le pupitre de 15° à 75° par pas égaux",
  "the root w of w·ρ(w) = strength": "la racine w de w·ρ(w) = richesse",
  "sucrose × 360.312/342.297": "saccharose × 360.312/342.297",
  "glucose + fructose × 342.297/360.312": "glucose + fructose × 342.297/360.312",
  "the band's bounds, then the bounds widened by the tolerance":
    "les bornes de la mention, puis les bornes élargies de la tolérance",
  "the smaller of sugar − low and high − sugar": "le plus petit de sucre − bas et haut − sucre",
  "the first band whose bounds hold": "la première mention dont les bornes conviennent",
  "every band whose bounds hold": "toutes les mentions dont les bornes conviennent",
  "volume·(1 − loss/100)/bottle, rounded down":
    "volume·(1 − perte/100)/bouteille, arrondi à l'entier inférieur",
  "TIRAGE.PRESSURE at each temperature": "TIRAGE.PRESSURE à chaque température",
  "v = V0·(s − S0)/(L − s), S0 as sucrose": "v = V0·(s − S0)/(L − s), S0 en saccharose",
  "P = c/(kH + h·529.31/T) + air·T/293.15 − 1.01325": "P = c/(kH + h·529.31/T) + air·T/293.15 − 1.01325",
  "the root x of P(x) = reading, a square equation; unfermented sugar and missing alcohol change the solubility":
    "la racine x de P(x) = relevé, une équation du second degré ; le sucre non fermenté et l'alcool qui manque changent la solubilité",
  "P ± 1.96·√(Σ(∂P/∂x·σx)²) over dose, yield, temperature and headspace":
    "P ± 1.96·√(Σ(∂P/∂x·σx)²) sur la dose, le rendement, la température et l'espace de tête",
  "m = V0·(s − S0)/(1000 − s·d), S0 as sucrose, d = 0.625 L/kg":
    "m = V0·(s − S0)/(1000 − s·d), S0 en saccharose, d = 0.625 L/kg",
  "V = V0 + starter + m·d with dry sugar, V0 + starter + v with liqueur":
    "V = V0 + levain + m·d avec du sucre sec, V0 + levain + v avec de la liqueur",

  // where they come from
  "each row's own: mostly trade bodies' pages, secondary; the local text decides":
    "celle de chaque ligne : surtout des pages d'interprofessions, secondaire ; le texte local décide",
  "periods in months: Regulation (EEC, Euratom) 1182/71 art. 3; minima as AGEING.MINIMUM":
    "délais en mois : Règlement (CEE, Euratom) 1182/71 art. 3 ; minimums comme AGEING.MINIMUM",
  "the table's own row: mostly trade bodies' pages, secondary; the local text decides":
    "celle de la ligne de la table : surtout des pages d'interprofessions, secondaire ; le texte local décide",
  "arithmetic; a breakage of 1 % is published practice":
    "arithmétique ; une casse de 1 % est une pratique publiée",
  "compound interest": "intérêts composés",
  arithmetic: "arithmétique",
  "derived, colligative; close to the trade's half of the alcohol degree below zero (common practice, no source)":
    "déduit, colligatif ; proche de la règle du métier, la moitié du degré d'alcool au-dessous de zéro (pratique courante, sans source)",
  "volume-weighted mean": "moyenne pondérée par les volumes",
  "derived mass balance": "bilan de masse déduit",
  "derived mass balance; d read in trade handbooks and derived from ICUMSA":
    "bilan de masse déduit ; d lu dans des manuels du métier et déduit d'ICUMSA",
  "derived mass balance; terms: Delegated Regulation (EU) 2019/33 annex III part A":
    "bilan de masse déduit ; mentions : Règlement délégué (UE) 2019/33 annexe III partie A",
  "Delegated Regulation (EU) 2019/33 art. 44, read in its predecessor":
    "Règlement délégué (UE) 2019/33 art. 44, lu dans le texte précédent",
  "Delegated Regulation (EU) 2019/33 art. 44, read in its predecessor; 27 CFR (secondary)":
    "Règlement délégué (UE) 2019/33 art. 44, lu dans le texte précédent ; 27 CFR (secondaire)",
  "Regulation (EU) 1169/2011 annex XIV; ethanol 0.78924 kg/L (memory: OIV tables)":
    "Règlement (UE) 1169/2011 annexe XIV ; éthanol 0,78924 kg/L (de mémoire : tables OIV)",
  "Directive 76/211/EEC annex I, 2.4 (memory; the same table read: FPackV § 9); above 10000 mL OIML R 87 (memory)":
    "Directive 76/211/CEE annexe I, 2.4 (de mémoire ; le même tableau lu : FPackV § 9) ; au-delà de 10000 mL OIML R 87 (de mémoire)",
  "OIV-MA-AS314-02; Regulation (EC) 1293/2005 (memory). It differs from PRESSURE.SHIFT, the physics: for 6 bar at 20 °C it is 11 % lower from 10 °C and 26 % lower from 0 °C, more at lower pressures.":
    "OIV-MA-AS314-02 ; Règlement (CE) 1293/2005 (de mémoire). Elle diffère de PRESSURE.SHIFT, la physique : pour 6 bar à 20 °C elle est plus basse de 11 % depuis 10 °C et de 26 % depuis 0 °C, davantage à des pressions plus basses.",
  "Regulation (EU) 1308/2013 annex VII part II; OIV Code I.4.4; 27 CFR; Australian and Québec rules":
    "Règlement (UE) 1308/2013 annexe VII partie II ; Code OIV I.4.4 ; 27 CFR ; règles australiennes et québécoises",
  "Commission Regulation (EEC) 2676/90, annex ch. 37, and OIV-MA-AS314 at 20 °C; van 't Hoff elsewhere":
    "Règlement (CEE) 2676/90 de la Commission, annexe ch. 37, et OIV-MA-AS314 à 20 °C ; van 't Hoff ailleurs",
  "SI brochure; standard atmosphere, pound and gravity exact by definition":
    "Brochure du SI ; atmosphère normale, livre et pesanteur exactes par définition",
  "solubility: Commission Regulation (EEC) 2676/90 and OIV-MA-AS314; closed bottle: IPhO 2025, theory Q3":
    "solubilité : Règlement (CEE) 2676/90 de la Commission et OIV-MA-AS314 ; bouteille fermée : IPhO 2025, théorie Q3",
  "rack 120, 60 a side, and cage 504: published practice":
    "pupitre 120, 60 par face, et caisse 504 : pratique publiée",
  "common practice, no source": "pratique courante, sans source",
  "ICUMSA density of sucrose solutions at 20 °C":
    "masse volumique ICUMSA des solutions de saccharose à 20 °C",
  "derived from the molar masses; 1.0526 read in an 1898 liqueur handbook":
    "déduit des masses molaires ; 1,0526 lu dans un manuel de liqueurs de 1898",
  "Delegated Regulation (EU) 2019/33 annex III part A, tolerance 3 g/L (secondary); OIV Code I.4.4":
    "Règlement délégué (UE) 2019/33 annexe III partie A, tolérance 3 g/L (secondaire) ; Code OIV I.4.4",
  "Delegated Regulation (EU) 2019/33 annex III part A; OIV Code I.4.4":
    "Règlement délégué (UE) 2019/33 annexe III partie A ; Code OIV I.4.4",
  "derived; 16.83 g/L for 1 % vol is the OIV and EU convention (memory)":
    "déduit ; 16,83 g/L pour 1 % vol est la convention OIV et UE (de mémoire)",
  "derived: TIRAGE.PRESSURE solved for the dose": "déduit : TIRAGE.PRESSURE résolu pour la dose",
  "derived from TIRAGE.PRESSURE; solubility: Commission Regulation (EEC) 2676/90 and OIV-MA-AS314":
    "déduit de TIRAGE.PRESSURE ; solubilité : Règlement (CEE) 2676/90 de la Commission et OIV-MA-AS314",
  "derived from TIRAGE.PRESSURE; the default deviations are from memory":
    "déduit de TIRAGE.PRESSURE ; les écarts par défaut sont de mémoire",
  "derived mass balance; 1 to 3 million cells/mL is published practice":
    "bilan de masse déduit ; 1 à 3 millions de cellules/mL est une pratique publiée",
  "derived from TIRAGE.PRESSURE": "déduit de TIRAGE.PRESSURE",

  // when they refuse
  "#N/A where no bottle was filled": "#N/A si aucune bouteille n'a été remplie",
  "#N/A where more wine remains than the fill wanted": "#N/A s'il reste plus de vin que le remplissage voulu",
  "#N/A where the liqueur is more than the bottle holds":
    "#N/A si la liqueur dépasse ce que contient la bouteille",
  "#N/A where the target does not lie between the two": "#N/A si la cible n'est pas entre les deux",
  "#N/A where the carrier alone is stronger than the liqueur wanted":
    "#N/A si le vin porteur seul est plus riche que la liqueur voulue",
  "#N/A where no liqueur is needed, or as DOSAGE.VOLUME does":
    "#N/A s'il ne faut pas de liqueur, ou comme DOSAGE.VOLUME",
  "#N/A where the liqueur does not fit": "#N/A si la liqueur n'a pas la place",
  "#N/A where every cell of the range is blank": "#N/A si toutes les cellules de la plage sont vides",
  "#N/A where the wine is already sweeter, the liqueur too weak, or the room too small":
    "#N/A si le vin est déjà plus sucré, la liqueur pas assez riche, ou la place trop petite",
  "#N/A for US rules above 14 % vol": "#N/A pour les règles US au-dessus de 14 % vol",
  "#N/A below vacuum; #VALUE! with the known units where a unit is not known":
    "#N/A au-dessous du vide ; #VALUE! avec les unités connues si une unité n'est pas connue",
  "#N/A where the pressure given is below the nitrogen's own":
    "#N/A si la pression donnée est au-dessous de celle de l'azote",
  "#VALUE! with the known terms where the term is not known":
    "#VALUE! avec les mentions connues si la mention n'est pas connue",
  "#N/A where the wine's own sugar is already more than the dose":
    "#N/A si le sucre propre du vin dépasse déjà la dose",
  "#N/A where the last temperature is below the first, or more than 200 rows would be needed":
    "#N/A si la dernière température est au-dessous de la première, ou s'il fallait plus de 200 lignes",
  "#N/A where no dose of 0 to 60 g/L gives that pressure":
    "#N/A si aucune dose de 0 à 60 g/L ne donne cette pression",
  "#N/A where the liqueur is no stronger than the dose, or the wine's own sugar is already more":
    "#N/A si la liqueur n'est pas plus riche que la dose, ou si le sucre propre du vin la dépasse déjà",
  "#N/A where the bottle cannot show that reading": "#N/A si la bouteille ne peut pas montrer ce relevé",
  "#N/A where the spread reaches below vacuum": "#N/A si la dispersion descend au-dessous du vide",
  "#N/A where the starter holds no more cells than wanted":
    "#N/A si le levain n'a pas plus de cellules que le nombre voulu",
  "#N/A as TIRAGE.SUGAR and TIRAGE.LIQUEUR do": "#N/A comme TIRAGE.SUGAR et TIRAGE.LIQUEUR",
  "#N/A where no yield of 0.5 to 1 explains the reading":
    "#N/A si aucun rendement de 0,5 à 1 n'explique le relevé",

  // cautions
  "Neck baths are below -20 °C: gloves, eye protection, ventilation.":
    "Le bac à glace est au-dessous de -20 °C : gants, protection des yeux, ventilation.",
  "The hottest day in storage decides whether a bottle holds; the glass maker's own rating is the limit.":
    "Le jour le plus chaud du stockage décide si une bouteille tient ; la pression admise par le verrier est la limite.",
  "Bottles are under pressure: face and hand protection at every turn.":
    "Les bouteilles sont sous pression : protection du visage et des mains à chaque tour.",
  "Local law decides; the tolerance of an analysis is no target.":
    "Le droit local décide ; la tolérance d'une analyse n'est pas une cible.",
  "The glass maker's own rating decides, at the hottest day in storage.":
    "La pression admise par le verrier décide, au jour le plus chaud du stockage.",
  "A filled bottle can burst. The glass maker's own rating decides, at the hottest day in storage.":
    "Une bouteille remplie peut éclater. La pression admise par le verrier décide, au jour le plus chaud du stockage.",
  "Bottles are under pressure while they are read: face and hand protection.":
    "Les bouteilles sont sous pression pendant le relevé : protection du visage et des mains.",
  "One bottle in forty lies above the high value.":
    "Une bouteille sur quarante se trouve au-dessus de la valeur haute.",

  // the help pages themselves
  "Mousse: functions": "Mousse : fonctions",
  "The functions": "Les fonctions",
  "All functions": "Toutes les fonctions",
  Languages: "Langues",
  "Type {0} in a cell. Tank volumes are hL, bottle and dose volumes mL, strengths g/L, mass kg, pressure bar above atmospheric, temperature °C, alcohol % vol.":
    "Saisir {0} dans une cellule. Volumes de cuve en hL, volumes de bouteille et de liqueur en mL, richesses en g/L, masses en kg, pressions en bar au-dessus de la pression atmosphérique, températures en °C, alcool en % vol.",
  "Take care.": "Attention.",
  "Filled bottles can burst, CO2 in cellars kills, neck baths are colder than −20 °C. The glass maker's own rating, local law and a licensed oenologist decide.":
    "Les bouteilles remplies peuvent éclater, le CO2 dans les caves tue, les bacs à glace sont plus froids que −20 °C. La pression admise par le verrier, le droit local et un œnologue diplômé décident.",
  Arguments: "Arguments",
  Argument: "Argument",
  Given: "Présence",
  needed: "obligatoire",
  optional: "facultatif",
  "What, unit and range": "Contenu, unité et plage",
  "It takes no arguments.": "Elle ne prend aucun argument.",
  Gives: "Donne",
  Equation: "Équation",
  Source: "Source",
  Refuses: "Refuse",
  Example: "Exemple",
  gives: "donne",
  "The example, step by step": "L'exemple, pas à pas",
  Steps: "Étapes",
  Step: "Étape",
  "With numbers": "Avec les nombres",
  Result: "Résultat",
  "Constants used": "Constantes employées",
  Constants: "Constantes",
  Symbol: "Symbole",
  Value: "Valeur",
  "What, and its source": "Contenu et source",
  "Rests on:": "Repose sur :",
  "Numbers are rounded for reading; the cell calculates in full.":
    "Les nombres sont arrondis pour la lecture ; la cellule calcule sans arrondir.",
  "Formulas and their numbers are written as in English. Where a comma marks decimals, type {0}":
    "Les formules et leurs nombres sont écrits comme en anglais. Dans un tableur en français, saisir {0}",
  TRUE: "VRAI",
  FALSE: "FAUX",
  "An argument out of range gives #VALUE! and says what is allowed; a question with no answer gives #N/A and says what would make one possible.":
    "Un argument hors plage donne #VALUE! (#VALEUR! en français) et dit ce qui est permis ; une question sans réponse donne #N/A et dit ce qui en rendrait une possible.",

  // how sure a source is
  "{0} (read)": "{0} (lu)",
  "{0} (secondary)": "{0} (secondaire)",
  "{0}: {1} (secondary)": "{0} : {1} (secondaire)",
  "{0}: {1} (memory)": "{0} : {1} (de mémoire)",
  "{0} (memory)": "{0} (de mémoire)",
  "{0} (derived)": "{0} (déduit)",
  "{0} (exact)": "{0} (exact)",
  "{0} (recorded {1})": "{0} (noté le {1})",
  "{0} (read, recorded {1})": "{0} (lu, noté le {1})",
  "{0} (secondary, recorded {1})": "{0} (secondaire, noté le {1})",
  "{0} (memory, recorded {1})": "{0} (de mémoire, noté le {1})",
  "{0} (derived, recorded {1})": "{0} (déduit, noté le {1})",
  "{0} (exact, recorded {1})": "{0} (exact, noté le {1})",

  // words that a function takes or gives stay as they are typed
  lees: "lees",
  total: "total",
};
