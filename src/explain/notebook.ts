/**
 * The sheet of paper a working is written on: arguments read in the order in which the function checks them, then
 * the steps. A step is one equation in symbols; the numbers are put in here, from the arguments, earlier steps and
 * constants that the symbols stand for.
 */
import { isBlankNumber, isBlankWord, optionalNumber, optionalTruth, optionalWord } from "../cellar/cells";
import { within, type Domain } from "../cellar/domains";
import { constantOf, constants, type ConstantSymbol } from "./constants";
import { numbersPutIn, shown } from "./numbers";
import type { Answer, Cited, Constant, Step } from "./types";

/** What a working comes to. */
export interface Conclusion {
  readonly result: Answer;
  readonly unit: string;
  readonly sources: readonly Cited[];
  readonly cautions?: readonly string[];
}

/** How one function is explained. */
export interface Explainer {
  /** The names of its arguments, in their order. */
  readonly parameters: readonly string[];
  readonly work: (on: Notebook) => Conclusion;
}

export const explainer = (parameters: string, work: Explainer["work"]): Explainer => ({
  parameters: parameters.split(" ").filter(Boolean),
  work,
});

/** An argument's symbol and what it is, as one text: "[s] Sugar wanted in the filled bottle". */
type Named = string;

function named(text: Named): { symbol?: string; what: string } {
  const match = /^\[(\p{L}[\p{L}\p{Nd}]*)\] (.+)$/su.exec(text);
  return match ? { symbol: match[1]!, what: match[2]! } : { what: text };
}

export class Notebook {
  readonly #arguments = new Map<number, Step[]>();
  readonly #steps: Step[] = [];
  readonly #values = new Map<string, number>();
  readonly #constants = new Map<string, Constant>();

  constructor(
    private readonly parameters: readonly string[],
    private readonly args: readonly unknown[],
  ) {}

  /** An argument as it stands in the call. */
  raw(parameter: string): unknown {
    return this.args[this.#place(parameter)];
  }

  /** A number that must be given. */
  number(parameter: string, domain: Domain, text: Named, unit: string = unitOf(domain)): number {
    const value = within(domain, this.raw(parameter), parameter);
    return this.#argument(parameter, text, value, unit, "given");
  }

  /** A number with a default, a figure or one of the constants. */
  optional(
    parameter: string,
    domain: Domain,
    text: Named,
    whenBlank: number | ConstantSymbol,
    unit: string = unitOf(domain),
  ): number {
    const usual = typeof whenBlank === "number" ? whenBlank : constants[whenBlank].value;
    const given = this.raw(parameter);
    const value = optionalNumber(domain, given, parameter, usual);
    const blank = isBlankNumber(domain, given);
    if (blank && typeof whenBlank === "string") this.constant(constants[whenBlank]);
    return this.#argument(parameter, text, value, unit, blank ? "default" : "given");
  }

  /** A number that may be left out altogether. */
  optionalOrNone(parameter: string, domain: Domain, text: Named, none: string): number | null {
    const value = optionalNumber(domain, this.raw(parameter), parameter, null);
    if (value === null) this.said(parameter, text, none, "default");
    else this.#argument(parameter, text, value, unitOf(domain), "given");
    return value;
  }

  truth(parameter: string, text: Named, whenBlank: boolean): boolean {
    const given = this.raw(parameter);
    const value = optionalTruth(given, parameter, whenBlank);
    this.said(parameter, text, value ? "TRUE" : "FALSE", isBlankWord(given) ? "default" : "given");
    return value;
  }

  word<Word extends string>(parameter: string, words: readonly Word[], text: Named, whenBlank: Word): Word {
    const given = this.raw(parameter);
    const value = optionalWord(words, given, parameter, whenBlank);
    this.said(parameter, text, value, isBlankWord(given) ? "default" : "given");
    return value;
  }

  /** An argument in words, once it has been read. */
  said(parameter: string, text: Named, value: string, argument: Step["argument"] = "given"): void {
    this.#arguments.set(this.#place(parameter), [
      this.#step(text, { result: value, shown: value, unit: "", ...asked(argument) }),
    ]);
  }

  /** An argument shown otherwise than as a number: a date. */
  reworded(parameter: string, shownAs: string): void {
    const at = this.#place(parameter);
    this.#arguments.set(
      at,
      this.#arguments.get(at)!.map((step) => ({ ...step, shown: shownAs, unit: "" })),
    );
  }

  /** One of the values of a range. */
  ofRange(parameter: string, text: Named, value: number, unit: string): void {
    const at = this.#place(parameter);
    const before = this.#arguments.get(at) ?? [];
    this.#argument(parameter, text, value, unit, "given");
    this.#arguments.set(at, [...before, ...this.#arguments.get(at)!]);
  }

  /** One equation, "m = V0·(s − S0)", its value from the cellar, kept under its symbol. */
  step(what: string, equation: string, value: number, unit: string): number {
    const at = equation.indexOf(" = ");
    const symbol = equation.slice(0, at);
    const numbers = numbersPutIn(equation.slice(at + 3), (each) => this.#valueOf(each));
    this.#values.set(symbol, value);
    this.#steps.push({ what, symbol, equation, numbers, result: value, shown: shown(value), unit });
    return value;
  }

  /** A number found, looked up or put back in, without an equation. */
  found(text: Named, value: number, unit: string, shownAs = shown(value)): number {
    this.#steps.push(this.#step(text, { result: value, shown: shownAs, unit }));
    const { symbol } = named(text);
    if (symbol !== undefined) this.#values.set(symbol, value);
    return value;
  }

  /** A finding in words. */
  say(what: string, result: string): void {
    this.#steps.push({ what, result, shown: result, unit: "" });
  }

  /** A constant used, to be listed with its source; later equations may call it by its symbol. */
  constant(constant: Constant): number {
    this.#constants.set(constant.symbol, constant);
    this.#values.set(constant.symbol, constant.value);
    return constant.value;
  }

  get steps(): Step[] {
    const places = [...this.#arguments.keys()].sort((one, other) => one - other);
    return [...places.flatMap((place) => this.#arguments.get(place)!), ...this.#steps];
  }

  get constants(): Constant[] {
    return [...this.#constants.values()];
  }

  #place(parameter: string): number {
    const place = this.parameters.indexOf(parameter);
    if (place < 0) throw new Error(`no argument is called ${parameter}`);
    return place;
  }

  #argument(parameter: string, text: Named, value: number, unit: string, argument: Step["argument"]): number {
    const step = this.#step(text, { result: value, shown: shown(value), unit, ...asked(argument) });
    this.#arguments.set(this.#place(parameter), [step]);
    if (step.symbol !== undefined) this.#values.set(step.symbol, value);
    return value;
  }

  #step(text: Named, rest: Omit<Step, "what" | "symbol">): Step {
    const { what, ...symbol } = named(text);
    return {
      what: rest.argument === "default" ? `Left blank, so the default. ${what}` : what,
      ...symbol,
      ...rest,
    };
  }

  #valueOf(symbol: string): number {
    const known = this.#values.get(symbol);
    if (known !== undefined) return known;
    const constant = constantOf(symbol);
    if (constant === undefined) throw new Error(`nothing is called ${symbol} here`);
    return this.constant(constant);
  }
}

/** A share needs no unit. */
const unitOf = ({ unit }: Domain) => (unit === "share" ? "" : unit);

const asked = (argument: Step["argument"]) => (argument === undefined ? {} : { argument });
