/**
 * Seed and number of runs of the tests with random contents: FUZZ_RUNS says how many each property gets, FUZZ_SEED
 * where they begin. Both are printed, so that what was found can be found again.
 */
import fc from "fast-check";

export const SEED = Number(process.env.FUZZ_SEED ?? 20_261_125);
const RUNS = Number(process.env.FUZZ_RUNS ?? 400);

let made = 0;
/** How many runs so far, for the last line. */
export const runsMade = () => made;

process.stdout.write(`fuzz: seed ${SEED}, FUZZ_RUNS ${RUNS}\n`);

const settings = (share: number) => {
  const numRuns = Math.max(5, Math.round(RUNS * share));
  made += numRuns;
  return { seed: SEED, numRuns };
};

/** `share`: of FUZZ_RUNS, less than 1 for what is slow. */
export function always<T>(arbitrary: fc.Arbitrary<T>, holds: (value: T) => void, share = 1): void {
  fc.assert(fc.property(arbitrary, holds), settings(share));
}
export function alwaysLater<T>(
  arbitrary: fc.Arbitrary<T>,
  holds: (value: T) => Promise<void>,
  share = 1,
): Promise<void> {
  return fc.assert(fc.asyncProperty(arbitrary, holds), settings(share));
}

/** Milliseconds of work so far, with the system's for this process; other programs that run besides do not count. */
export function worked_ms(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Milliseconds of work in the fastest of a few tries. */
export function fastest(work: () => unknown, enough: number, tries = 3): number {
  let least = Infinity;
  for (let each = 0; each < tries && least > enough; each++) {
    const start = worked_ms();
    work();
    least = Math.min(least, worked_ms() - start);
  }
  return least;
}

/** A text of this length out of one that is repeated. */
export const repeated = (unit: string, length: number) =>
  unit.repeat(Math.ceil(length / unit.length)).slice(0, length);

/** What people and programs put into texts, to see whether it stays text. */
export const HOSTILE_TEXTS = [
  "=1+1",
  '=HYPERLINK("http://127.0.0.1/","x")',
  "+1+1",
  "-1+1",
  "@SUM(1,1)",
  "\t=1+1",
  "\n=1+1",
  "=cmd|' /C calc'!A0",
  "'=1+1",
  "''",
  "#N/A",
  "TRUE",
  "1e5",
  "007",
  "2026-01-02",
  "<script>window.ran=1</script>",
  "<img src=x onerror=window.ran=1>",
  "</t></is></c><c><f>1+1</f></c>",
  "]]><!--",
  "&lt;&amp;#65;",
  "_x0041_",
  '"; MOUSSE.X("',
  '"&1+1&"',
  "Jo's “Cuvée”",
  "{0} of {1}",
  "${x} $& $1 $`",
  "__proto__",
  "constructor",
  "[a]:b*c?d/e\\f",
  "History",
  "\u202e=1+1\u202c",
  "\u200f\u200bnull",
  "🍾👩‍👩‍👧 é e\u0301",
  "a\nb\r\nc",
  " outer ",
] as const;

/** What XML has no room for. */
export const UNHOLDABLE_TEXTS = ["a\u0000b", "\u0007", "\u001b[31m", "a\ud83cb", "\udf7e", "\ufffe"] as const;
