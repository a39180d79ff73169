/**
 * What stands in a batch file: JSON in UTF-8. Text in another encoding would be read with other letters in its names,
 * so it is not read at all.
 */
export type FileText = { readonly content: unknown } | { readonly fault: string; readonly where?: Where };
/** Where the text stops being JSON. */
interface Where {
  /** In the JavaScript engine's words. */
  readonly message: string;
  readonly line?: number;
}

const decoder = new TextDecoder("utf-8", { fatal: true });

/** The content, or what is wrong with it. */
export function batchFileContent(bytes: Uint8Array): FileText {
  if (PACKED.some((start) => start.every((byte, index) => bytes[index] === byte))) {
    return { fault: "it is a workbook or another packed file" };
  }
  let text: string;
  try {
    text = decoder.decode(bytes);
  } catch {
    return { fault: "its text is not in UTF-8; save it again in that encoding" };
  }
  if (text.trim() === "") return { fault: "it is blank" };
  try {
    return { content: JSON.parse(text) };
  } catch (error) {
    return { fault: "it is not JSON", where: whereIn(text, error) };
  }
}

/** A zip, as workbooks are, and the container of older and of locked ones. */
const PACKED = [
  [0x50, 0x4b, 0x03, 0x04],
  [0xd0, 0xcf, 0x11, 0xe0],
];

/** A line is found where the message counts characters, which it does after what it quotes. */
function whereIn(text: string, error: unknown): Where {
  const message = (error instanceof Error ? error.message : String(error)).replace(/\s+/gu, " ");
  const position = / at position (\d+)$/u.exec(message)?.[1];
  return position === undefined
    ? { message }
    : { message, line: text.slice(0, Number(position)).split("\n").length };
}
