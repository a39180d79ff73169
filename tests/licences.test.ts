/**
 * What ships is named with its licence, and what is installed is what the lock file says.
 *
 * Known advisories are asked for with "npm audit"; its service does not answer where these tests were written (405), so
 * only what the lock file itself tells is looked at here.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { build } from "esbuild";
import { licenceText } from "../src/build/licences";
import { PERMISSIVE, isPermissive, licensed, packageFolder } from "../src/build/licences-package";

const ROOT = path.resolve(__dirname, "..");
const read = (file: string) => readFileSync(path.join(ROOT, file), "utf8");

interface Installed {
  readonly version: string;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly deprecated?: string;
  readonly hasInstallScript?: boolean;
  readonly devDependencies?: Readonly<Record<string, string>>;
}
const { packages } = JSON.parse(read("package-lock.json")) as { packages: Record<string, Installed> };
const installed = Object.entries(packages).filter(([place]) => place !== "");
const placesWhere = (is: (each: Installed) => unknown) =>
  installed.filter(([, each]) => is(each)).map(([place]) => place);
const nameIn = (place: string) => place.split("node_modules/").at(-1)!;

describe("what ships", () => {
  const text = read("dist/licences.txt");
  const named = [...text.matchAll(/^(@?[a-z][\w./-]*) (\d+\.\d+\.\d+), (.+)$/gmu)].map(
    ([, name, version, id]) => ({ name: name!, version: version!, id: id! }),
  );

  test("every package that another bundler puts into the scripts and styles is named", async () => {
    const { metafile } = await build({
      entryPoints: ["functions/index.ts", "taskpane/taskpane.ts", "workbench/workbench.ts"].map((file) =>
        path.join(ROOT, "src", file),
      ),
      absWorkingDir: ROOT,
      outdir: ROOT,
      bundle: true,
      minifySyntax: true,
      define: { "process.env.NODE_ENV": '"production"' },
      splitting: true,
      format: "esm",
      write: false,
      metafile: true,
      logLevel: "silent",
    });
    const shipped = new Set(
      Object.values(metafile.outputs)
        .flatMap(({ inputs }) => Object.entries(inputs))
        .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
        .flatMap(([file]) => packageFolder(path.join(ROOT, file)) ?? [])
        .map((folder) => nameIn(folder.replaceAll("\\", "/"))),
    );
    expect(shipped.size).toBeGreaterThan(60);
    const names = new Set(named.map(({ name }) => name));
    expect([...shipped].filter((name) => !names.has(name))).toEqual([]);
  });

  test("each in a version of the lock file, under a permissive licence, with its text", () => {
    const versions = new Set(installed.map(([place, { version }]) => `${nameIn(place)} ${version}`));
    expect(named.filter(({ name, version }) => !versions.has(`${name} ${version}`))).toEqual([]);
    expect(named.filter(({ id }) => !PERMISSIVE.includes(id))).toEqual([]);
    const groups = text.split(`\n\n${"-".repeat(80)}\n\n`).slice(2);
    expect(groups.reduce((sum, group) => sum + group.split("\n\n")[0]!.split("\n").length, 0)).toBe(
      named.length,
    );
    for (const group of groups) {
      const words = group.split("\n\n").slice(1).join("\n\n");
      expect(words).toMatch(/copyright/iu);
      expect(words).toMatch(
        /permission|redistribution|permitted|apache license|text of the licence stands/iu,
      );
    }
    expect(text).toContain(read("LICENSE").trim());
  });

  test("nothing without an open licence, and not Office.js", () => {
    expect(
      named.map(({ name }) => name).filter((name) => /@univerjs-pro|office-js|axe-core/u.test(name)),
    ).toEqual([]);
    expect(read("dist/taskpane.js")).not.toContain("OSF.DDA");
    // not even installed
    expect(placesWhere(() => true).filter((place) => place.includes("@univerjs-pro"))).toEqual([]);
  });

  test("a licence that asks for more stops the build, and says which", () => {
    const folder = mkdtempSync(path.join(tmpdir(), "mousse-"));
    const withManifest = (manifest: object, ...files: [string, string][]) => {
      const place = path.join(folder, "node_modules", "strange");
      rmSync(place, { recursive: true, force: true });
      mkdirSync(place, { recursive: true });
      writeFileSync(
        path.join(place, "package.json"),
        JSON.stringify({ name: "strange", version: "1.0.0", ...manifest }),
      );
      for (const [name, content] of files) writeFileSync(path.join(place, name), content);
      return () => licensed(place);
    };
    expect(withManifest({ license: "GPL-3.0-only" })).toThrow(
      "strange 1.0.0 is under GPL-3.0-only; ship only 0BSD",
    );
    expect(withManifest({ license: "MIT AND MPL-2.0" })).toThrow("MIT AND MPL-2.0");
    expect(withManifest({})).toThrow("no licence that is named");
    expect(withManifest({ license: "BSD-3-Clause" })).toThrow("holds no text of BSD-3-Clause");
    expect(withManifest({}, ["LICENSE", "MIT License\n\nCopyright (c) somebody"])()).toEqual({
      name: "strange",
      version: "1.0.0",
      id: "MIT",
      text: "MIT License\n\nCopyright (c) somebody",
    });
    expect(withManifest({ license: "MIT", author: "A. Body" })().text).toContain(
      "Copyright (c) A. Body\n\nPermission",
    );
    rmSync(folder, { recursive: true });
    expect(isPermissive("(GPL-2.0 OR MIT)")).toBe(true);
    const alike = [
      licensed(path.join(ROOT, "node_modules/react")),
      licensed(path.join(ROOT, "node_modules/react-dom")),
    ];
    expect(licenceText("Own.", alike).match(/MIT License/gu)).toHaveLength(1);
  });
});

describe("what is installed", () => {
  const own = JSON.parse(read("package.json")) as Record<string, Record<string, string>>;

  test("every package has its checksum, and none an address of its own", () => {
    expect(installed.length).toBeGreaterThan(1000);
    expect(placesWhere(({ integrity }) => !/^sha512-[\w+/]+=*$/u.test(integrity ?? ""))).toEqual([]);
    expect(placesWhere(({ resolved }) => resolved !== undefined)).toEqual([]);
    expect(read(".npmrc")).not.toMatch(/registry|token|_auth/iu);
  });

  test("exact versions are asked for, and the lock file has those", () => {
    expect(Object.keys(own).filter((key) => /dependencies$/iu.test(key))).toEqual(["devDependencies"]);
    const inexact = Object.entries(own.devDependencies!).filter(
      ([, version]) => !/^\d+\.\d+\.\d+$/u.test(version),
    );
    expect(inexact).toEqual([]);
    expect(packages[""]!.devDependencies).toEqual(own.devDependencies);
    for (const [name, version] of Object.entries(own.devDependencies!))
      expect([name, packages[`node_modules/${name}`]?.version]).toEqual([name, version]);
  });

  test("nothing is missing, nothing is there besides", () => {
    const { stdout } = spawnSync("npm", ["ls", "--all", "--json"], {
      cwd: ROOT,
      encoding: "utf8",
      maxBuffer: 64 * 2 ** 20,
      shell: process.platform === "win32",
    });
    const { name, problems = [] } = JSON.parse(stdout) as { name: string; problems?: string[] };
    expect({ name, problems }).toEqual({ name: "mousse", problems: [] });
  });

  test("four packages would run a script when they are installed, and none of it is needed or ships", () => {
    // an install with --ignore-scripts built all the same: esbuild looks whether the binary that came as a package of its own runs; @parcel/watcher builds only where it is
    // told to build from source; core-js-pure and protobufjs print a line
    const withScript = placesWhere(({ hasInstallScript }) => hasInstallScript).map(nameIn);
    expect(withScript.sort()).toEqual(["@parcel/watcher", "core-js-pure", "esbuild", "protobufjs"]);
    for (const name of withScript) expect(read("dist/licences.txt")).not.toContain(`\n${name} `);
  });

  test("no package is marked as given up by its authors", () => {
    expect(placesWhere(({ deprecated }) => deprecated)).toEqual([]);
  });
});
