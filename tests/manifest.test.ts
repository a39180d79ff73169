/**
 * The add-in's manifest: the published schema, and what the schema cannot see.
 */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { schemaProblems, schemaTest, schemasFolder } from "./support/ooxml";

const ROOT = path.resolve(__dirname, "..");
const manifest = readFileSync(path.join(ROOT, "manifest.xml"), "utf8");
const { version } = JSON.parse(readFileSync(path.join(ROOT, "package.json"), "utf8")) as { version: string };

const all = (pattern: RegExp) => [...manifest.matchAll(pattern)].map((match) => match[1]!);

schemaTest("keeps to the published schema", async () => {
  expect(await schemaProblems(manifest, path.join(schemasFolder, "manifest/manifest-all.xsd"))).toEqual([]);
});

test("every resource is defined once and used, and every one used is defined", () => {
  const defined = all(/<bt:(?:Image|Url|String) id="([^"]+)"/g);
  const used = all(/resid="([^"]+)"/g);
  expect(new Set(defined).size).toBe(defined.length);
  expect([...new Set(used)].sort()).toEqual([...defined].sort());
});

test("one runtime serves pane, functions and commands", () => {
  const [runtime] = all(/<Runtime resid="([^"]+)" lifetime="long"/g);
  expect(runtime).toBe("Pane.Url");
  expect(manifest).toMatch(new RegExp(`<Page>\\s*<SourceLocation resid="${runtime}"/>`));
  expect(manifest).toContain(`<FunctionFile resid="${runtime}"/>`);
  expect(manifest.indexOf("<Runtimes>")).toBeLessThan(manifest.indexOf("<AllFormFactors>"));
  expect(manifest).not.toContain("TaskpaneId");
});

test("every address is https, and the files behind them are built or in the project", () => {
  const addresses = all(/DefaultValue="(https?:[^"]+)"/g);
  expect(addresses.length).toBeGreaterThan(8);
  for (const address of addresses) {
    const { protocol, pathname } = new URL(address);
    expect(protocol).toBe("https:");
    const places = [path.join(ROOT, "dist", pathname), path.join(ROOT, "src", pathname)];
    expect([pathname, places.some((place) => existsSync(place))]).toEqual([pathname, true]);
  }
});

test.each([16, 32, 80])("the %i px icon has that size", (size) => {
  const png = readFileSync(path.join(ROOT, `src/assets/icon-${size}.png`));
  // width and height stand in the first chunk of a PNG, big-endian
  expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([size, size]);
});

test("identity, namespace, version and permission", () => {
  expect(all(/<Id>([^<]+)<\/Id>/g)[0]).toMatch(
    /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
  );
  expect(manifest).toContain('id="Functions.Namespace" DefaultValue="MOUSSE"');
  expect(all(/<Version>([^<]+)</g)[0]).toBe(`${version}.0`);
  expect(manifest).toContain("<Permissions>ReadWriteDocument</Permissions>");
});
