/**
 * Written files, looked into: the parts of a package, and whether XML keeps to its published schema.
 */
import { read } from "@e965/xlsx";
import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { join, resolve } from "node:path";

const root = resolve(__dirname, "../..");

export const schemasFolder = resolve(root, process.env.SCHEMAS_DIR ?? "../shared/schemas");

const schemasPresent = existsSync(join(schemasFolder, "ooxml/sml.xsd"));
if (!schemasPresent) {
  process.stderr.write(
    "Schema tests need SCHEMAS_DIR: a folder with ooxml/sml.xsd and manifest/manifest-all.xsd\n",
  );
}

/** A test that needs the schemas: skipped where they are missing, but not in CI, where it fails. */
export const schemaTest = schemasPresent || process.env.CI ? test : test.skip;

/** What the schema has against the XML, one sentence each. A schema that cannot be read is an exception. */
export function schemaProblems(xml: string, schemaPath: string): Promise<string[]> {
  return new Promise((done, fail) => {
    const script = join(root, "tests/support/validate-xml.mjs");
    const options = { cwd: root, maxBuffer: 2 ** 26 };
    const validator = execFile(process.execPath, [script, schemaPath], options, (error, out) =>
      error ? fail(new Error(error.message, { cause: error })) : done(JSON.parse(out) as string[]),
    );
    // a validator that ends early closes the pipe; its own error says why
    validator.stdin?.on("error", () => undefined);
    validator.stdin?.end(xml);
  });
}

/** The parts of a package by path, as text. */
export function packageParts(file: Uint8Array): Map<string, string> {
  const { files } = read(file, { type: "array", bookFiles: true }) as unknown as {
    files: Record<string, { content?: Uint8Array }>;
  };
  // the reader adds an entry of its own, marked by a control character
  const parts = Object.entries(files).filter(
    ([path, { content }]) => !path.startsWith("\u0001") && content?.length,
  );
  return new Map(parts.map(([path, { content }]) => [path, Buffer.from(content ?? []).toString("utf8")]));
}

/** The first pattern that fits a part's path names its schema. */
const PART_SCHEMAS: readonly (readonly [RegExp, string])[] = [
  [/^\[Content_Types\]\.xml$/, "opc-contentTypes.xsd"],
  [/\.rels$/, "opc-relationships.xsd"],
  [/^docProps\/app\.xml$/, "shared-documentPropertiesExtended.xsd"],
  [/^xl\/theme\//, "dml-main.xsd"],
  [/^xl\/charts\/chart/, "dml-chart.xsd"],
  [/^xl\/drawings\/drawing/, "dml-spreadsheetDrawing.xsd"],
  [/^xl\/(workbook|styles|sharedStrings|worksheets\/\w+|tables\/\w+|comments\w*)\.xml$/, "sml.xsd"],
];

/** Its schema is built on Dublin Core's, which is not part of the standard. */
const WITHOUT_SCHEMA = "docProps/core.xml";

/** The schemas declare no attribute of XML's own, though every program writes this one to keep spaces. */
const withoutSpaceAttribute = (xml: string) => xml.replaceAll('<t xml:space="preserve">', "<t>");

/** What the schemas have against any part of a package, each with the part's path. */
export async function packageProblems(file: Uint8Array): Promise<string[]> {
  const problems = [...packageParts(file)].map(async ([path, xml]) => {
    if (path === WITHOUT_SCHEMA) return [];
    const [, schema] = PART_SCHEMAS.find(([pattern]) => pattern.test(path)) ?? [];
    if (schema === undefined) return [`${path}: no schema is known for this part`];
    const found = await schemaProblems(withoutSpaceAttribute(xml), join(schemasFolder, "ooxml", schema));
    return found.map((problem) => `${path}: ${problem}`);
  });
  return (await Promise.all(problems)).flat();
}
