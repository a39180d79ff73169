/**
 * The room that disgorging leaves in the neck, and what goes into it: dosage, then wine up to the fill wanted.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import { shownResult } from "../typed-numbers";
import { SWATCH, figure, write, type Saying } from "./figure";
import { neckPicture, stacked, type NeckPart, type NeckPicture } from "./geometry-neck";
import { newLooks, type Look, type Looks } from "./looks";
import { along, around, bent, svg } from "./svg";

const CAPTION = "Room in the neck after disgorging";

const PARTS: Readonly<Record<NeckPart, { readonly name: string; readonly look: Look }>> = {
  dosage: { name: "Dosage", look: "solid" },
  topUp: { name: "Top-up wine", look: "dots" },
  tooMuch: { name: "Does not fit", look: "cross" },
};

/** Parts of a bottle are always told in mL, so no unit is chosen here. */
const ml = (volume_mL: number) => `${shownResult(volume_mL, volume_mL < 100 ? 2 : 0)} mL`;

export function neckDrawing(inputs: BatchInputs, plan: BatchPlan): HTMLElement {
  const given = { room_mL: plan.dosage.spaceMl, dosage_mL: plan.dosage.eachMl };
  const isTooMuch = stacked(given).some(({ part }) => part === "tooMuch");
  const looks = newLooks();
  const { volumes, height, fillY, fillEnds, glass, mouth, span, spanTexts } = neckPicture(given, {
    nameOf: (part) => (part === "dosage" && isTooMuch ? "Dosage that fits" : PARTS[part].name),
    valueOf: ml,
    room: "Room",
    noRoom: "No room",
  });
  return figure({
    name: "neck",
    caption: CAPTION,
    height,
    nodes: [
      looks.defs,
      svg("path", { d: wineIn(glass), class: "drawing-wine" }),
      ...volumes.map(({ part, corners }) =>
        svg("path", { d: around(corners), ...looks.area(PARTS[part].look) }),
      ),
      ...glass.map((side) => svg("path", { d: bent(side), class: "drawing-glass" })),
      svg("rect", { ...mouth, rx: 4, class: "drawing-mouth" }),
      svg("line", { x1: fillEnds[0], x2: fillEnds[1], y1: fillY, y2: fillY, class: "drawing-fill" }),
      ...(span
        ? [
            svg("path", {
              d: along([
                [span.x + 4, span.top],
                [span.x, span.top],
                [span.x, span.foot],
                [span.x + 4, span.foot],
              ]),
              class: "drawing-axis",
            }),
          ]
        : []),
      ...volumes.map(({ leader }) => svg("path", { d: along(leader), class: "drawing-leader" })),
      ...volumes.flatMap(({ name, value }) => [write(name, "quiet"), write(value, "strong")]),
      ...spanTexts.map((label, index) => write(label, index === 0 ? "quiet" : "strong")),
    ],
    sayings: sayingsOf(inputs, plan, looks),
  });
}

/** Between the two sides below the neck: down the left one and back up the right one. */
function wineIn([left, right]: NeckPicture["glass"]): string {
  const [, foot, first, second, end] = right;
  return `${bent(left.slice(1))}L${bent([end, second, first, foot]).slice(1)}Z`;
}

function sayingsOf({ batch, disgorging }: BatchInputs, { dosage }: BatchPlan, looks: Looks): Saying[] {
  const given = { room_mL: dosage.spaceMl, dosage_mL: dosage.eachMl };
  const parts = stacked(given);
  const has = (part: NeckPart) => parts.find((each) => each.part === part)?.volume_mL;
  const patch = (part: NeckPart) => [
    svg("rect", {
      x: 1,
      y: 1,
      width: SWATCH.width - 2,
      height: SWATCH.height - 2,
      ...looks.area(PARTS[part].look),
    }),
  ];
  const [topUp, tooMuch] = [has("topUp"), has("tooMuch")];
  return [
    {
      mark: [svg("line", { x1: 0, x2: SWATCH.width, y1: 7, y2: 7, class: "drawing-fill" })],
      words: `Fill wanted: ${ml(batch.bottle_mL)}.`,
    },
    { words: roomWords(dosage.spaceMl, dosage.filledMl, disgorging.lost_mL) },
    dosage.eachMl === 0
      ? { words: "Zero dosage: no liqueur goes in." }
      : {
          ...(has("dosage") !== undefined && { mark: patch("dosage") }),
          words: `Dosage: ${ml(dosage.eachMl)} a bottle.`,
        },
    ...(topUp === undefined
      ? []
      : [{ mark: patch("topUp"), words: `Top-up wine needed: ${ml(topUp)} a bottle.` }]),
    ...(tooMuch === undefined
      ? []
      : [{ mark: patch("tooMuch"), words: `${ml(tooMuch)} of the dosage does not fit.` }]),
    { words: "The volumes are to scale; the bottle around them is not." },
  ];
}

function roomWords(room_mL: number | null, filled_mL: number, lost_mL: number): string {
  if (room_mL !== null)
    return `Room: ${ml(room_mL)}; ${ml(filled_mL)} were filled, ${ml(lost_mL)} are lost at disgorging.`;
  return lost_mL > filled_mL
    ? `No room is known: ${ml(lost_mL)} are lost, more than the ${ml(filled_mL)} filled.`
    : `No room: ${ml(filled_mL - lost_mL)} remain after disgorging, more than the fill wanted.`;
}
