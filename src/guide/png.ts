/**
 * The size of a PNG picture, from its head.
 */
export interface Size {
  readonly width: number;
  readonly height: number;
}

const SIGNATURE = "89504e470d0a1a0a";
const WIDTH_AT = 16;
const HEIGHT_AT = 20;

export function sizeOf(png: Buffer): Size {
  if (png.subarray(0, 8).toString("hex") !== SIGNATURE) throw new Error("this is no PNG picture");
  return { width: png.readUInt32BE(WIDTH_AT), height: png.readUInt32BE(HEIGHT_AT) };
}
