/**
 * The published types of Excel's API: what each member that was used belongs to, and since which version it is there.
 */
import { readFileSync } from "node:fs";
import type { Operation } from "./excel-proxies";

const TYPES = readFileSync(require.resolve("@types/office-js/index.d.ts"), "utf8");
/** Other programs have classes of the same names. */
const EXCEL = TYPES.slice(TYPES.search(/^declare namespace Excel \{$/m)).split(/^}$/m)[0]!;

interface Member {
  /** ExcelApi 1.…; 1 where nothing is said. */
  readonly version: number;
  /** The class of what it gives, if it is one. */
  readonly gives: string;
}
const known = new Map<string, Member>();

function memberOf(type: string, member: string): Member {
  const key = `${type}.${member}`;
  const there = known.get(key);
  if (there) return there;
  const body = new RegExp(`\\n    class ${type} extends [^]*?\\n    }\\n`).exec(EXCEL)?.[0] ?? "";
  const at = body.search(new RegExp(`\\n        (readonly )?${member}\\??[(:]`));
  if (at < 0) throw new Error(`Excel's ${type} has no ${member}`);
  const comment = body.slice(body.lastIndexOf("/**", at), at);
  const line = /^.*$/m.exec(body.slice(at + 1))![0];
  const found = {
    version: Number(/Api set: ExcelApi 1\.(\d+)/.exec(comment)?.[1] ?? 1),
    gives: /: Excel\.(\w+);$/.exec(line)?.[1] ?? "",
  };
  known.set(key, found);
  return found;
}

/** An argument may itself be a chain with parentheses. */
function steps(chain: string): string[] {
  const all: string[] = [];
  let [depth, step] = [0, ""];
  for (const letter of chain) {
    if (letter === "(") depth++;
    if (depth === 0 && letter === ".") {
      all.push(step);
      step = "";
    } else if (depth === 0) step += letter;
    if (letter === ")") depth--;
  }
  return chain === "" ? [] : [...all, step];
}

/** Sent under another name than in the types. */
const OTHERWISE: Readonly<Record<string, string>> = { Gridlines: "showGridlines" };

/** The newest member that was needed to do this; what the published types do not know is refused. */
export function versionOf({ sheet, on, name }: Operation): number {
  let type = sheet ? "Worksheet" : "Workbook";
  if (sheet && on === "" && name === "Add") type = "WorksheetCollection";
  let version = 1;
  for (const step of [...steps(on), name]) {
    const member = OTHERWISE[step] ?? step[0]!.toLowerCase() + step.slice(1);
    if (member.startsWith("_")) break;
    const found = memberOf(type, member);
    version = Math.max(version, found.version);
    type = found.gives;
  }
  return version;
}
