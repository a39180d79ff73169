/**
 * An explanation as plain text, line by line, the way a colleague would read it out.
 */
import { shown } from "./numbers";
import { citedText } from "./sources";
import type { Constant, Explanation, Step } from "./types";

const quantity = (value: string, unit: string) => (unit === "" ? value : `${value} ${unit}`);

/** "Sucrose to weigh: m = V0·(s − S0)/(1000 − s·d) = 5000·(24 − 0)/(1000 − 24·0.625) = 121.83 kg of sucrose." */
export function stepText({ what, symbol, equation, numbers, shown: result, unit }: Step): string {
  const value = quantity(result, unit);
  if (equation === undefined) return `${what}: ${value}${symbol === undefined ? "" : ` (${symbol})`}.`;
  return `${what}: ${equation} = ${numbers} = ${value}.`;
}

/** "d = 0.625 L/kg, liquid displaced by dissolved sugar: trade handbooks (read)." */
export function constantText({ symbol, value, unit, what, source }: Constant): string {
  return `${symbol} = ${quantity(shown(value), unit)}, ${what}: ${citedText(source)}.`;
}

export function readOut(explanation: Explanation): string[] {
  if (explanation.kind !== "working") return [explanation.call, explanation.sentence, explanation.meaning];
  const { call, steps, constants, sources, caution } = explanation;
  return [
    call,
    ...steps.map(stepText),
    ...constants.map(constantText),
    `Sources: ${sources.map(citedText).join("; ")}.`,
    ...(caution === undefined ? [] : [caution]),
  ];
}
