/**
 * Places of files as the person at the command line names them, and why one cannot be used.
 */
import { statSync } from "node:fs";
import path from "node:path";

/** Told to the user as it is, without a stack. */
export class Failure extends Error {}

export function fail(...lines: string[]): never {
  throw new Failure(lines.join("\n"));
}

/** npm runs a script in the project's folder, and tells in which one the person stands. */
export function fromHere(file: string): string {
  const { npm_lifecycle_event: script, INIT_CWD: here } = process.env;
  return path.resolve(script === "plan" ? (here ?? "") : "", file);
}

export function kindAt(file: string): "file" | "folder" | "nothing" {
  try {
    return statSync(fromHere(file)).isDirectory() ? "folder" : "file";
  } catch (error) {
    if (["ENOENT", "ENOTDIR"].includes(codeOf(error))) return "nothing";
    fail(`${file} cannot be used: ${reasonOf(error)}.`);
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "it is not there",
  EEXIST: "it is there already",
  EACCES: "that is not permitted, or another program holds it open",
  EPERM: "that is not permitted, or another program holds it open",
  EBUSY: "another program holds it open",
  EROFS: "the disk is read-only",
  ENOSPC: "the disk is full",
  ENAMETOOLONG: "its name is too long",
  ELOOP: "it is a link that leads to itself",
};

const codeOf = (error: unknown) => (error as NodeJS.ErrnoException).code ?? "";

export const reasonOf = (error: unknown): string =>
  REASONS[codeOf(error)] ?? (error instanceof Error ? error.message : String(error));
