/**
 * Runs tests for mutation testing in one process with the spreadsheet engine kept: a tenth of the time that Jest takes
 * to load everything anew for each change. The tests are bundled once and evaluated again for every change, so that
 * those in constants count too. It knows of Jest what these tests use: test, test.each, describe, expect.
 */
import { readdirSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { PluginKind, commonTokens, declareClassPlugin, tokens } from "@stryker-mutator/api/plugin";
import {
  DryRunStatus,
  TestStatus,
  determineHitLimitReached,
  toMutantRunResult,
} from "@stryker-mutator/api/test-runner";
import { build } from "esbuild";
import { expect } from "expect";
import { startEngine } from "../../src/commandline/engine-sheets.mjs";

/** `testFiles` of the configuration: files, or all tests of a folder as "folder/*.test.ts". */
const listed = (patterns) =>
  patterns.flatMap((pattern) => {
    const folder = path.dirname(pattern);
    if (path.basename(pattern) !== "*.test.ts") return [pattern];
    return readdirSync(folder)
      .filter((file) => file.endsWith(".test.ts"))
      .map((file) => path.join(folder, file));
  });

async function bundled(files) {
  const { outputFiles } = await build({
    stdin: {
      contents: files.map((file) => `import "./${file}";`).join("\n"),
      resolveDir: process.cwd(),
    },
    bundle: true,
    format: "cjs",
    logLevel: "error",
    packages: "external",
    platform: "node",
    target: "node20",
    write: false,
  });
  return outputFiles[0].text;
}

/** Collects the tests while their files are evaluated. */
function collector() {
  const tests = [];
  const within = [];
  const test = (name, run) => tests.push({ name: [...within, name].join(" "), run });
  const describe = (name, define) => {
    within.push(name);
    define();
    within.pop();
  };
  for (const one of [test, describe])
    one.each = (table) => (name, run) =>
      table.forEach((row, index) =>
        one(`${name} ${index}`, () => run(...(Array.isArray(row) ? row : [row]))),
      );
  return { tests, test, describe };
}

class KeptRunner {
  static inject = tokens(commonTokens.options);

  constructor({ testFiles }) {
    this.files = listed(testFiles);
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    globalThis.calculateSheets = await startEngine();
    // files of the repository are looked for two folders up, as from any test
    const folder = path.resolve("tests/mutation");
    const names = ["require", "module", "exports", "__dirname", "test", "describe", "expect"];
    const evaluate = new Function(...names, await bundled(this.files));
    const require = createRequire(path.join(folder, "index.js"));
    this.load = () => {
      const { tests, test, describe } = collector();
      const module = { exports: {} };
      evaluate(require, module, module.exports, folder, test, describe, expect);
      return tests;
    };
  }

  async dryRun() {
    globalThis.__stryker__ = { mutantCoverage: { static: {}, perTest: {} } };
    const result = await this.run(false);
    return { ...result, mutantCoverage: globalThis.__stryker__.mutantCoverage };
  }

  async mutantRun({ activeMutant, hitLimit, disableBail }) {
    globalThis.__stryker__ = {
      activeMutant: activeMutant.id,
      ...(hitLimit && { hitLimit, hitCount: 0 }),
    };
    const result = await this.run(!disableBail);
    const { hitCount } = globalThis.__stryker__;
    return toMutantRunResult(determineHitLimitReached(hitCount, hitLimit) ?? result);
  }

  async run(bail) {
    const results = [];
    const told = async (name, run) => {
      const start = performance.now();
      let failure;
      try {
        await run();
      } catch (error) {
        failure = String(error?.message ?? error);
      }
      results.push({
        id: name,
        name,
        timeSpentMs: performance.now() - start,
        ...(failure === undefined
          ? { status: TestStatus.Success }
          : { status: TestStatus.Failed, failureMessage: failure.slice(0, 500) }),
      });
      return failure === undefined;
    };
    let tests = [];
    await told("loading", () => void (tests = this.load()));
    for (const { name, run } of tests) {
      if (bail && results.at(-1).status === TestStatus.Failed) break;
      await told(name, run);
    }
    return { status: DryRunStatus.Complete, tests: results };
  }
}
export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, "kept", KeptRunner)];
