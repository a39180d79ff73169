/**
 * The texts that stand in the code, read from its syntax trees: plain ones, and those with something put in, which
 * become patterns with {0}, {1} …
 */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";

const SRC = path.resolve(__dirname, "../../src");

/** Rooms whose texts a user comes to read. */
const ROOMS = ["cellar", "workbook", "explain", "hosts", "taskpane", "workbench"];

export interface SourceText {
  readonly text: string;
  readonly file: string;
}

export function sourceTexts(): SourceText[] {
  return ROOMS.flatMap((room) =>
    readdirSync(path.join(SRC, room), { recursive: true, encoding: "utf8" })
      .filter((file) => file.endsWith(".ts"))
      .sort()
      .flatMap((file) =>
        textsOf(path.join(SRC, room, file)).map((text) => ({ text, file: `${room}/${file}` })),
      ),
  );
}

function textsOf(file: string): string[] {
  const source = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.ES2022, true);
  const found = new Set<string>();
  const visit = (node: ts.Node): void => {
    // a type or a file's name is no text
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return;
    const text = textOf(node);
    // heads of columns carry a mark for how they are set
    const plain = text?.trim().replace(/^[>~](?=\p{L}|\d|…)/u, "");
    if (plain !== undefined && isReadable(plain)) found.add(plain);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return [...found];
}

function textOf(node: ts.Node): string | undefined {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text;
  if (!ts.isTemplateExpression(node)) return undefined;
  const spans = node.templateSpans.map(({ literal }, index) => `{${index}}${literal.text}`);
  return node.head.text + spans.join("");
}

/** Words with a space between them, or one word with a capital: keys and names of the code are neither. */
const isReadable = (text: string) =>
  /\p{L}{2}/u.test(text) && (/\s/u.test(text.trim()) || /^\p{Lu}\p{Ll}+$/u.test(text));
