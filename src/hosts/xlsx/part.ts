/**
 * One part of a written file, edited. The library decides some things that it takes no option for; its file
 * is a plain zip, so the part in question is taken out, changed and put back.
 */

/** Bytes of the zip's fixed headers: before a part, in the directory for a part, and after the directory. */
const HEADER = { local: 30, directory: 46, end: 22 } as const;
const DEFLATED = 8;

const viewOf = (file: Uint8Array) => new DataView(file.buffer, file.byteOffset, file.byteLength);

const directoryOffsetAt = (file: Uint8Array) => file.length - HEADER.end + 16;

/** Where the directory describes each part, and the part's name. */
function* directory(file: Uint8Array): Generator<{ at: number; name: string }> {
  const view = viewOf(file);
  const end = file.length - HEADER.end;
  for (let at = view.getUint32(directoryOffsetAt(file), true); at < end;) {
    const nameStart = at + HEADER.directory;
    const nameEnd = nameStart + view.getUint16(at + 28, true);
    yield { at, name: new TextDecoder().decode(file.subarray(nameStart, nameEnd)) };
    at = nameEnd + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
}

async function through(stream: GenericTransformStream, bytes: Uint8Array): Promise<Uint8Array> {
  const piped = new Blob([bytes.slice()])
    .stream()
    .pipeThrough(stream as TransformStream<Uint8Array, Uint8Array>);
  return new Uint8Array(await new Response(piped).arrayBuffer());
}

function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}

export async function editPart(
  file: Uint8Array,
  path: string,
  edit: (xml: string) => string,
): Promise<Uint8Array> {
  const entry = [...directory(file)].find(({ name }) => name === path);
  if (!entry) throw new Error(`The written file has no part ${path}.`);
  const old = viewOf(file);
  const local = old.getUint32(entry.at + 42, true);
  const start = local + HEADER.local + old.getUint16(local + 26, true) + old.getUint16(local + 28, true);
  const stop = start + old.getUint32(entry.at + 20, true);
  const stored = file.subarray(start, stop);
  const isDeflated = old.getUint16(entry.at + 10, true) === DEFLATED;
  const text = isDeflated ? await through(new DecompressionStream("deflate-raw"), stored) : stored;

  const edited = new TextEncoder().encode(edit(new TextDecoder().decode(text)));
  const packed = await through(new CompressionStream("deflate-raw"), edited);
  const moved = packed.length - stored.length;
  const result = new Uint8Array(file.length + moved);
  result.set(file.subarray(0, start));
  result.set(packed, start);
  result.set(file.subarray(stop), start + packed.length);

  const view = viewOf(result);
  const describe = (methodAt: number, checksumAt: number) => {
    view.setUint16(methodAt, DEFLATED, true);
    view.setUint32(checksumAt, crc32(edited), true);
    view.setUint32(checksumAt + 4, packed.length, true);
    view.setUint32(checksumAt + 8, edited.length, true);
  };
  describe(local + 8, local + 14);
  describe(entry.at + moved + 10, entry.at + moved + 16);

  // whatever was behind the part has moved: the directory, and the parts it lists after this one
  const directoryAt = directoryOffsetAt(result);
  view.setUint32(directoryAt, view.getUint32(directoryAt, true) + moved, true);
  for (const { at } of directory(result)) {
    const offset = view.getUint32(at + 42, true);
    if (offset > local) view.setUint32(at + 42, offset + moved, true);
  }
  return result;
}
