/**
 * The one way to say no. A refusal is a record; its sentence is made here, once, so that a cell, the pane
 * and the command line all word it alike.
 */
export interface RefusalRecord {
  /** "domain": an argument outside what is allowed. "unanswerable": fair arguments, but no answer exists. */
  readonly kind: "domain" | "unanswerable";
  /** The argument's public name, with its unit: `temperature_C`, `tirage.pressure_bar`. */
  readonly argument: string;
  readonly given: unknown;
  /** What is allowed, or what would make an answer possible: "give -5 to 45 °C". */
  readonly remedy: string;
}

export class Refusal extends Error implements RefusalRecord {
  readonly kind: RefusalRecord["kind"];
  readonly argument: string;
  readonly given: unknown;
  readonly remedy: string;

  constructor(record: RefusalRecord) {
    super(refusalSentence(record));
    this.name = "Refusal";
    this.kind = record.kind;
    this.argument = record.argument;
    this.given = record.given;
    this.remedy = record.remedy;
  }

  /** The same refusal under the name by which the person at the edge knows the argument. */
  renamed(argument: string, given: unknown = this.given): Refusal {
    return new Refusal({ kind: this.kind, argument, given, remedy: this.remedy });
  }
}

/** Whether this is a refusal, also one thrown by another script's copy of this module. */
export function isRefusal(error: unknown): error is Refusal {
  return error instanceof Error && error.name === "Refusal" && "remedy" in error && "kind" in error;
}

/** A question with no answer: names what was given and what would make an answer possible. */
export function unanswerable(argument: string, given: unknown, remedy: string): Refusal {
  return new Refusal({ kind: "unanswerable", argument, given, remedy });
}

export function refusalSentence({ argument, given, remedy }: RefusalRecord): string {
  return `${argument} is ${wordGiven(given)}; ${remedy}`;
}

/** How a refused value is quoted back: numbers short, text in quotes and cut, blanks in words. */
export function wordGiven(given: unknown): string {
  if (given === undefined || given === null || given === "") return "blank";
  // in full: rounded, a value just outside would read as one that is allowed
  if (typeof given === "number") return Number.isFinite(given) ? String(given) : "not a finite number";
  if (typeof given === "boolean") return given ? "TRUE" : "FALSE";
  if (typeof given === "string") return `"${given.length > 40 ? `${given.slice(0, 40)}…` : given}"`;
  return Array.isArray(given) ? "a range or list" : "not a number or text";
}

/** A number in at most seven significant digits, without a float's tail. */
export const wordNumber = (value: number) => String(Number(value.toPrecision(7)));
