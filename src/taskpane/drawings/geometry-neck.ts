/**
 * The room in the neck, to scale: volumes stacked in a neck that widens downwards, each with an area proportional to
 * its mL.
 */
import { ASCENT, LINE, WIDTH, apart, type Label } from "./geometry-labels";
import type { Point } from "./svg";

export type NeckPart = "dosage" | "topUp" | "tooMuch";

export interface NeckVolumes {
  /** null where disgorging leaves none that could be filled. */
  readonly room_mL: number | null;
  readonly dosage_mL: number;
}

export interface NeckVolume {
  readonly part: NeckPart;
  readonly volume_mL: number;
}

/** A dosage that fills the room exactly leaves no wine to top up, whatever the last bits say. */
const FLOAT_TAIL = 1e-12;

/** From the wine upwards; what has no volume is left out. */
export function stacked({ room_mL, dosage_mL }: NeckVolumes): NeckVolume[] {
  const room = room_mL ?? 0;
  const all: NeckVolume[] = [
    { part: "dosage", volume_mL: Math.min(dosage_mL, room) },
    { part: "topUp", volume_mL: room - dosage_mL },
    { part: "tooMuch", volume_mL: dosage_mL - room },
  ];
  return all.filter(({ volume_mL }) => volume_mL > FLOAT_TAIL * Math.max(room, dosage_mL));
}

/** The part of the neck that is to scale. */
const NECK = { middle: 112, foot: 184, height: 132, wide: 66, narrow: 46 } as const;
const SLOPE = (NECK.wide - NECK.narrow) / NECK.height;
export const NECK_AREA = (NECK.height * (NECK.wide + NECK.narrow)) / 2;
const TOP = NECK.foot - NECK.height;
/** Empty neck above what is to scale. */
const ABOVE = 26;
const HEIGHT = 236;
const RIGHT = 188;
/** A name with its value below. */
const ROW = 2 * LINE + 4;

/** How high an area reaches, from the foot: the root of wide·h − slope·h²/2 = area. */
export const heightOfArea = (area: number) =>
  (2 * area) / (NECK.wide + Math.sqrt(Math.max(0, NECK.wide ** 2 - 2 * SLOPE * area)));

const halfWidthAt = (height: number) => (NECK.wide - SLOPE * height) / 2;

function slice(from: number, to: number): Point[] {
  const side = (height: number, way: number): Point => [
    NECK.middle + way * halfWidthAt(height),
    NECK.foot - height,
  ];
  return [side(from, -1), side(to, -1), side(to, 1), side(from, 1)];
}

export interface PlacedVolume extends NeckVolume {
  readonly corners: readonly Point[];
  readonly name: Label;
  readonly value: Label;
  /** From the volume to its name. */
  readonly leader: readonly Point[];
}

/** One side of the bottle: mouth, foot of the neck, two handles of a curve, and its end. */
export type Glass = readonly [mouth: Point, foot: Point, first: Point, second: Point, end: Point];

export interface NeckPicture {
  readonly height: number;
  readonly volumes: readonly PlacedVolume[];
  /** The fill wanted, where the room ends. */
  readonly fillY: number;
  readonly fillEnds: readonly [left: number, right: number];
  readonly glass: readonly [left: Glass, right: Glass];
  readonly mouth: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** How far the room reaches, at the left. */
  readonly span: { readonly x: number; readonly top: number; readonly foot: number } | null;
  readonly spanTexts: readonly [name: Label, value: Label] | readonly [name: Label];
}

export interface NeckTexts {
  readonly nameOf: (part: NeckPart) => string;
  readonly valueOf: (volume_mL: number) => string;
  readonly room: string;
  readonly noRoom: string;
}

export function neckPicture(given: NeckVolumes, texts: NeckTexts): NeckPicture {
  const volumes = stacked(given);
  const room = given.room_mL ?? 0;
  const total = Math.max(room, given.dosage_mL);
  const heightOf = (volume_mL: number) => (total === 0 ? 0 : heightOfArea((NECK_AREA * volume_mL) / total));
  let reached_mL = 0;
  const slices = volumes.map(({ volume_mL }) => {
    const from = heightOf(reached_mL);
    reached_mL += volume_mL;
    return { from, to: heightOf(Math.min(reached_mL, total)) };
  });
  const wishes = slices.map(({ from, to }) => NECK.foot - (from + to) / 2);
  // from the top downwards, as they are read
  const middles = apart([...wishes].reverse(), ROW, TOP - LINE, NECK.foot + LINE).reverse();
  const fillY = NECK.foot - heightOf(room);
  const roomMiddle = Math.min((fillY + NECK.foot) / 2, NECK.foot - LINE / 2);
  const spanX = NECK.middle - NECK.wide / 2 - 10;
  // straight down the neck, then bent outwards by two handles
  const shoulder = (way: number): Glass => {
    const at = (beyond: number, y: number): Point => [NECK.middle + way * (NECK.wide / 2 + beyond), y];
    return [
      [NECK.middle + way * halfWidthAt(NECK.height + ABOVE), TOP - ABOVE],
      at(0, NECK.foot),
      at(3, NECK.foot + 22),
      at(16, NECK.foot + 36),
      at(36, HEIGHT),
    ];
  };
  const [left, right] = [shoulder(-1), shoulder(1)];
  return {
    height: HEIGHT,
    volumes: volumes.map((volume, index): PlacedVolume => {
      const { from, to } = slices[index]!;
      const y = middles[index]!;
      const edge = NECK.middle + halfWidthAt((from + to) / 2);
      return {
        ...volume,
        corners: slice(from, to),
        name: { text: texts.nameOf(volume.part), x: RIGHT, y: y - LINE + ASCENT, anchor: "start" },
        value: { text: texts.valueOf(volume.volume_mL), x: RIGHT, y: y + ASCENT, anchor: "start" },
        leader: [
          [edge - 6, wishes[index]!],
          [NECK.middle + NECK.wide / 2 + 8, wishes[index]!],
          [RIGHT - 14, y],
          [RIGHT - 5, y],
        ],
      };
    }),
    fillY,
    fillEnds: [spanX - 5, NECK.middle + halfWidthAt(heightOf(room)) + 8],
    glass: [left, right],
    mouth: { x: NECK.middle - 26, y: TOP - ABOVE - 14, width: 52, height: 15 },
    span: room > 0 ? { x: spanX, top: fillY, foot: NECK.foot } : null,
    spanTexts:
      room > 0
        ? [
            { text: texts.room, x: spanX - 6, y: roomMiddle - LINE + ASCENT, anchor: "end" },
            { text: texts.valueOf(room), x: spanX - 6, y: roomMiddle + ASCENT, anchor: "end" },
          ]
        : [{ text: texts.noRoom, x: spanX - 8, y: NECK.foot + 4, anchor: "end" }],
  };
}

/** Where texts must stay. */
export const NECK_FRAME = { left: 0, top: 0, width: WIDTH, height: HEIGHT } as const;
