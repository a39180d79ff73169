/**
 * The doc comments of the functions, read from their source: the one description of each function, from which the
 * help pages are made. Runs in the build and in tests, not in a page.
 */
import ts from "typescript";

export interface ParameterDoc {
  readonly name: string;
  readonly optional: boolean;
  /** "Base wine in the tank, hL (more than 0, at most 100000)." */
  readonly text: string;
}

export interface FunctionDoc {
  readonly id: string;
  readonly description: string;
  readonly parameters: readonly ParameterDoc[];
  readonly returns: string;
  readonly equation: string;
  readonly source: string;
  /** When it answers #N/A or #VALUE! beyond an argument out of range. */
  readonly refuses?: string;
  readonly caution?: string;
  /** "TIRAGE.SUGAR(50, 24) = 121.83" */
  readonly example: string;
}

/** The docs of every function in these sources; a function without a needed part is an error that names both. */
export function functionDocs(
  sources: readonly { readonly file: string; readonly text: string }[],
): FunctionDoc[] {
  const docs = sources.flatMap(({ file, text }) => {
    const tree = ts.createSourceFile(file, text, ts.ScriptTarget.ES2020, true);
    return tree.statements.filter(ts.isFunctionDeclaration).flatMap(docOf);
  });
  return docs.sort((one, other) => one.id.localeCompare(other.id, "en"));
}

const textOf = (tag: ts.JSDocTag) =>
  (ts.getTextOfJSDocComment(tag.comment) ?? "").replace(/\s+/g, " ").trim();

function docOf(declaration: ts.FunctionDeclaration): FunctionDoc[] {
  const tags = ts.getJSDocTags(declaration);
  const found = (name: string) => tags.find((tag) => tag.tagName.text === name);
  const id = found("customfunction");
  if (!id) return [];
  const needed = (name: string) => {
    const tag = found(name);
    if (!tag || textOf(tag) === "") throw new Error(`${textOf(id)} has no @${name} in its doc comment`);
    return textOf(tag);
  };
  const given = (name: string) => {
    const tag = found(name);
    return tag ? { [name]: textOf(tag) } : {};
  };
  const comments = ts.getJSDocCommentsAndTags(declaration).filter(ts.isJSDoc);
  const description = ts.getTextOfJSDocComment(comments.at(-1)?.comment)?.replace(/\s+/g, " ").trim();
  if (!description) throw new Error(`${textOf(id)} has no description in its doc comment`);
  return [
    {
      id: textOf(id),
      description,
      parameters: tags
        .filter(ts.isJSDocParameterTag)
        .map((tag) => ({ name: tag.name.getText(), optional: tag.isBracketed, text: textOf(tag) })),
      returns: needed("returns"),
      equation: needed("equation"),
      source: needed("source"),
      ...given("refuses"),
      ...given("caution"),
      example: needed("example"),
    },
  ];
}
