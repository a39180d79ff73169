/**
 * Time, middles, and work in a process of its own.
 */
import { fork } from "node:child_process";
import { PerformanceObserver } from "node:perf_hooks";
import { setTimeout } from "node:timers/promises";

export async function timed<T>(work: () => T | Promise<T>): Promise<readonly [seconds: number, result: T]> {
  const start = performance.now();
  const result = await work();
  return [(performance.now() - start) / 1000, result];
}

const TOLD_MS = 50;

/** As `timed`, and how much of it Node spent clearing memory. */
export async function timedWithClearing<T>(
  work: () => T | Promise<T>,
): Promise<readonly [seconds: number, clearing: number, result: T]> {
  const cleared: PerformanceEntry[] = [];
  const observer = new PerformanceObserver((list) => void cleared.push(...list.getEntries()));
  observer.observe({ entryTypes: ["gc"] });
  const [seconds, result] = await timed(work);
  const end = performance.now();
  // what was cleared is told a little later
  await setTimeout(TOLD_MS);
  observer.disconnect();
  const clearing = cleared
    .filter(({ startTime }) => startTime < end)
    .reduce((sum, { duration }) => sum + duration / 1000, 0);
  return [seconds, clearing, result];
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return Number.isInteger(middle) ? (sorted[middle - 1]! + sorted[middle]!) / 2 : sorted[Math.floor(middle)]!;
}

/** What a file sends when it is run with these arguments in a process of its own. */
export function inProcess<T>(
  file: string,
  args: readonly string[],
  nodeOptions: readonly string[] = [],
): Promise<T> {
  return new Promise((resolve, reject) => {
    const child = fork(file, args, {
      execArgv: [...process.execArgv, ...nodeOptions],
      // what a library prints must not come between the figures
      stdio: ["ignore", "ignore", "pipe", "ipc"],
    });
    let said = "";
    child.stderr!.on("data", (text: Buffer) => (said += text.toString()));
    child.once("message", (message) => {
      resolve(message as T);
      child.kill();
    });
    child.once("error", reject);
    child.once("exit", (code, signal) =>
      reject(
        new Error(`${args.join(" ")} ended without a result (${signal ?? code}):\n${said.slice(-2000)}`),
      ),
    );
  });
}
