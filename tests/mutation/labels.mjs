/**
 * For mutation testing of the sheets: words and looks that nothing calculates with are left alone. A label that is
 * emptied is not a wrong figure, and the comparison with the stored sample workbooks sees each of them. Texts that
 * formulas compare or show as results stay.
 */
import { PluginKind, declareValuePlugin } from "@stryker-mutator/api/plugin";

/** Properties of rows, cells, pages and charts that hold words or looks. */
const PROPERTIES = new Set([
  "description",
  "format",
  "head",
  "height",
  "label",
  "lines",
  "look",
  "message",
  "note",
  "source",
  "style",
  "title",
  "unit",
]);
/** Functions whose texts are words: all arguments, or the first so many. */
const FUNCTIONS = new Map([
  ["cellar", 2],
  ["columnHeads", Infinity],
  ["constant", 2],
  ["headed", Infinity],
  ["heading", Infinity],
  ["ofBand", 5],
  ["paragraph", Infinity],
  ["pressureRow", 1],
  ["row", 2],
  ["step", 2],
  ["tank", 2],
  ["text", Infinity],
  ["workingRow", 2],
]);
/** Tables of words and looks. */
const CONSTANTS = new Set(["CAUTIONS", "COLUMN_WIDTHS", "FORMATS", "LEGEND", "SAYING_SO", "UNITS"]);

const calledName = ({ callee }) => callee.name ?? callee.property?.name;

function isWord(path) {
  const { parent, key, listKey } = path;
  if (parent?.type === "ObjectProperty" && key === "value") {
    return PROPERTIES.has(parent.key.name) && /Literal$/.test(path.node.type);
  }
  if (parent?.type === "CallExpression" && listKey === "arguments") {
    const words = FUNCTIONS.get(calledName(parent)) ?? 0;
    return key < words && /Literal$/.test(path.node.type);
  }
  return false;
}

const isTable = ({ node }) => node.type === "VariableDeclarator" && CONSTANTS.has(node.id.name);

export const strykerPlugins = [
  declareValuePlugin(PluginKind.Ignore, "labels", {
    shouldIgnore: (path) => (isWord(path) || isTable(path) ? "a word or a look" : undefined),
  }),
];
