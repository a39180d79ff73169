/**
 * npm run benchmark: what Mousse costs in time, bytes and memory, each figure beside its limit. Figures, not tests:
 * they depend on the machine, and are to be taken on a quiet one.
 *
 *   --only functions,grid    some of the parts
 *   --json                   as JSON
 *   --docs                   also writes these parts into src/docs/benchmark.md
 */
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { cpus, loadavg, totalmem } from "node:os";
import path from "node:path";
import { format, resolveConfig } from "prettier";
import { inProcess } from "./clock";
import { functions } from "./functions";
import { grid } from "./grid";
import { libreoffice } from "./libreoffice";
import { page } from "./page";
import { asMarkdown, asText, misses, type Report } from "./report";
import { seasons } from "./seasons";
import { start } from "./start";

const PARTS: Readonly<Record<string, () => Report | Promise<Report>>> = {
  functions,
  grid,
  libreoffice,
  page,
  start,
  seasons,
};
const ROOT = path.resolve(__dirname, "../..");
const DOCS = path.join(ROOT, "src/docs/benchmark.md");

type Outcome = { readonly report: Report; readonly seconds: number } | { readonly failure: string };

const optionValue = (name: string) => process.argv[process.argv.indexOf(name) + 1] ?? "";
const has = (name: string) => process.argv.includes(name);

function wanted(): string[] {
  if (!has("--only")) return Object.keys(PARTS);
  const names = optionValue("--only").split(",");
  const unknown = names.filter((name) => !(name in PARTS));
  if (unknown.length > 0)
    throw new Error(`There is no part ${unknown.join(", ")}; give some of ${Object.keys(PARTS).join(",")}.`);
  return names;
}

/** Each part in a process of its own: what one compiles or leaves in memory does not change another. */
async function outcomeOf(part: string): Promise<Outcome> {
  const start = performance.now();
  try {
    const report = await inProcess<Report>(__filename, ["--part", part]);
    return { report, seconds: (performance.now() - start) / 1000 };
  } catch (error) {
    return { failure: `${part}: ${error instanceof Error ? error.message : String(error)}` };
  }
}

function newest(folder: string): number {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((each) => each.isFile());
  return Math.max(...files.map(({ parentPath, name }) => statSync(path.join(parentPath, name)).mtimeMs));
}

function machine(): string[] {
  const load = loadavg()[0]!;
  return [
    `${new Date().toISOString().slice(0, 10)}; ${cpus().length} × ${cpus()[0]?.model.trim()}, ${Math.round(totalmem() / 2 ** 30)} GB; ${process.platform}, Node ${process.versions.node}, V8 ${process.versions.v8}; load of the machine at the start ${load.toFixed(1)}.`,
    ...(load > 0.7
      ? ["The machine was busy with other work: the times are too long, the ratios about right."]
      : []),
  ];
}

const endOf = (outcome: Outcome, form: (report: Report) => string) =>
  "failure" in outcome ? `No figures from ${outcome.failure}` : form(outcome.report);

/** The parts that were measured, each with where and when; the others stay as they are. */
async function writeDocs(about: readonly string[], outcomes: readonly Outcome[]): Promise<void> {
  const intro =
    "# Benchmark\n\nWritten by `npm run benchmark -- --docs`. Each figure stands beside its limit: the most that it should be, or the least that it could be.";
  const sections = new Map<string, string>();
  const before = existsSync(DOCS)
    ? readFileSync(DOCS, "utf8")
        .split(/^(?=## )/m)
        .slice(1)
    : [];
  for (const section of before) sections.set(section.split("\n", 1)[0]!, section);
  for (const outcome of outcomes) {
    if ("failure" in outcome) throw new Error(outcome.failure);
    const [title = "", ...rest] = asMarkdown(outcome.report).split("\n");
    sections.set(title, [title, "", about.join(" "), ...rest].join("\n"));
  }
  const options = (await resolveConfig(DOCS)) ?? {};
  const text = [intro, ...sections.values()].join("\n\n");
  writeFileSync(DOCS, await format(text, { ...options, parser: "markdown" }));
}

async function main(): Promise<void> {
  const about = machine();
  const dist = path.join(ROOT, "dist");
  if (!existsSync(dist)) about.push("There is no build: npm run build makes it.");
  else if (newest(path.join(ROOT, "src")) > newest(dist))
    about.push("dist may be older than src: npm run build makes it anew.");
  const isJson = has("--json");
  if (!isJson) console.log(about.join("\n"));
  const outcomes: Outcome[] = [];
  for (const part of wanted()) {
    const outcome = await outcomeOf(part);
    outcomes.push(outcome);
    if (isJson) continue;
    console.log(`\n${endOf(outcome, asText)}`);
    if ("seconds" in outcome) console.log(`(${outcome.seconds.toFixed(0)} s)`);
  }
  const missed = outcomes.flatMap((each) => ("report" in each ? misses(each.report) : []));
  if (isJson) console.log(JSON.stringify({ about, outcomes }, null, 2));
  else console.log(`\nLimits missed: ${missed.map(({ what }) => what).join("; ") || "none"}`);
  if (has("--docs")) await writeDocs(about, outcomes);
  if (outcomes.some((each) => "failure" in each)) process.exitCode = 1;
}

// a part does not outlive the run that wanted it
process.once("disconnect", () => process.exit(1));
const report = has("--part") ? Promise.resolve(PARTS[optionValue("--part")]!()) : undefined;
const work = report ? report.then((found) => void process.send!(found)) : main();
work.catch((error: unknown) => {
  const text = error instanceof Error ? error : new Error(String(error));
  console.error(has("--part") ? text.stack : text.message);
  process.exit(1);
});
