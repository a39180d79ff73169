/**
 * npm run in-a-row: the tests that open a page, a spreadsheet or another program, again and again, to find those that
 * fail now and then. `npm run in-a-row -- 5 tests/browser` gives the number of runs and the suites; build first.
 * Left out: hosts/portable, samples and xlsx, in which LibreOffice and a check of XML work for minutes; and what neither
 * opens anything nor waits, with random cases from a fixed seed.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import path from "node:path";

const RUNS = 20;
const SUITES = [
  "tests/(browser|commandline|fuzz|help|licences|manifest|taskpane|words)",
  "tests/hosts/(grid|excel-selection|season-in|contract|broken|round)",
];

const [count = String(RUNS), ...given] = process.argv.slice(2);
const runs = Number(count);
if (!Number.isInteger(runs) || runs < 1)
  throw new Error(`The number of runs is ${count}; allowed: 1 or more.`);
const suites = given.length > 0 ? given : SUITES;

const folder = mkdtempSync(path.join(tmpdir(), "in-a-row-"));
const report = path.join(folder, "report.json");
let failedRuns = 0;
try {
  for (let run = 1; run <= runs; run += 1) {
    const begun = Date.now();
    const { status } = spawnSync("npx", ["jest", ...suites, "--silent", "--json", `--outputFile=${report}`], {
      stdio: "ignore",
      shell: process.platform === "win32",
    });
    if (!existsSync(report)) throw new Error(`Jest ran nothing: is there a suite ${suites.join(" ")}?`);
    const { numTotalTests, numPassedTests, testResults } = JSON.parse(readFileSync(report, "utf8"));
    rmSync(report);
    const seconds = Math.round((Date.now() - begun) / 1000);
    const load = loadavg()[0].toFixed(1);
    console.log(`${run}. ${numPassedTests} of ${numTotalTests} passed, ${seconds} s, load ${load}`);
    if (status === 0) continue;
    failedRuns += 1;
    for (const { name, message, assertionResults } of testResults) {
      const failed = assertionResults.filter((each) => each.status === "failed");
      for (const each of failed) console.log(`   ${each.fullName}\n   ${each.failureMessages[0]}`);
      if (failed.length === 0 && message !== "") console.log(`   ${name}\n   ${message}`);
    }
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
console.log(failedRuns === 0 ? `No test failed in ${runs} runs.` : `${failedRuns} of ${runs} runs failed.`);
process.exitCode = failedRuns === 0 ? 0 : 1;
