/**
 * functions.json in every language: only descriptions and help addresses differ, and none is forgotten.
 */
import { ENGLISH, helpLanguages } from "../../src/help/languages";
import { linked, metadataFile } from "../../src/help/metadata";
import { LANGUAGES } from "../../src/words/languages";
import { allFunctions } from "../support/functions";

interface Metadata {
  functions: {
    id: string;
    description: string;
    helpUrl: string;
    parameters: { name: string; description: string }[];
  }[];
}

const ORIGIN = "https://example.org/mousse";
const languages = helpLanguages();
const french = languages.find(({ code }) => code === "fr")!;
let json: string;
beforeAll(async () => {
  json = (await allFunctions()).json;
});
const read = (language = ENGLISH) => JSON.parse(linked(json, ORIGIN, language)) as Metadata;
const withoutWords = ({ functions, ...rest }: Metadata) => ({
  ...rest,
  functions: functions.map((each) => ({
    ...each,
    description: "",
    helpUrl: "",
    parameters: each.parameters.map((parameter) => ({ ...parameter, description: "" })),
  })),
});

test("those of the pane, English first", () => {
  expect(languages[0]).toBe(ENGLISH);
  expect(languages.map(({ code }) => code).sort()).toEqual(LANGUAGES.map(({ code }) => code).sort());
  expect(languages.map(metadataFile)).toEqual(["functions.json", "functions.fr.json"]);
});

test("in French ids, names, arguments and types are the same, and every description is another", () => {
  const [one, other] = [read(), read(french)];
  expect(withoutWords(other)).toEqual(withoutWords(one));
  other.functions.forEach((each, index) => {
    const english = one.functions[index]!;
    expect(each.helpUrl).toBe(`${ORIGIN}/help/fr/${each.id.toLowerCase()}.html`);
    expect(english.helpUrl).toBe(`${ORIGIN}/help/${each.id.toLowerCase()}.html`);
    expect(each.description).not.toBe(english.description);
    each.parameters.forEach(({ name, description }, at) => {
      // "Stock, L" is the same word
      const isSame = description.startsWith("Stock, L (0 à");
      expect([each.id, name, isSame || description !== english.parameters[at]!.description]).toEqual([
        each.id,
        name,
        true,
      ]);
      expect(description).not.toMatch(/\b(?:to|the|of|blank|more|wine|most)\b/u);
    });
  });
});

test("a description without a French text stops the build, and is named", () => {
  const metadata = JSON.parse(json) as Metadata;
  metadata.functions[0]!.parameters[0]!.description = "Something new, g/L (0 to 7).";
  const changed = JSON.stringify(metadata);
  expect(() => linked(changed, ORIGIN, french)).toThrow(
    /^Français has no text for one description of the functions; add to src\/words\/fr-functions\.ts:\n[A-Z.]+: Something new, g\/L \(0 to 7\)\.$/u,
  );
  expect(() => linked(changed, ORIGIN)).not.toThrow();
  metadata.functions[1]!.description = "Another.";
  expect(() => linked(JSON.stringify(metadata), ORIGIN, french)).toThrow("no text for 2 descriptions");
});

test("a language of the pane without a catalogue of the functions stops the build, and says what to add", () => {
  const it = { code: "it", name: "Italiano", load: () => Promise.resolve({}) };
  expect(() => helpLanguages([...LANGUAGES, it])).toThrow(
    "the functions are not described in Italiano; add src/words/it-functions.ts, and a line in src/help/languages.ts",
  );
});
