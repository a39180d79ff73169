/**
 * Refusals explained: the cell's own sentence, and what the error in the cell means.
 */
import { wordGiven, type Refusal } from "../cellar/refusal";
import type { Refused } from "./types";

const MEANINGS = {
  domain: {
    error: "#VALUE!",
    meaning: "#VALUE! means that an argument lies outside what the function allows, or is not of its kind.",
  },
  unanswerable: {
    error: "#N/A",
    meaning: "#N/A means that each argument is allowed, but together they have no answer.",
  },
} as const;

export function refused(call: string, refusal: Refusal): Refused {
  const { kind, argument, given, remedy, message } = refusal;
  return { kind, call, argument, given, remedy, sentence: message, ...MEANINGS[kind] };
}

const MOST_NEAR = 5;
/** No id is longer, and near to one is no text that is much longer. */
const LONGEST_MISTYPED = 60;

/** An id that no function has: those near it, or the families. */
export function unknownFunction(call: string, id: string, known: readonly string[]): Refused {
  const limit = Math.max(2, Math.floor(id.length / 4));
  const near = (id.length > LONGEST_MISTYPED ? [] : known)
    .map((each) => ({
      each,
      distance: Math.min(editDistance(id, each), editDistance(id, each.replace(".", ""))),
    }))
    .filter(({ distance }) => distance <= limit)
    .sort((one, other) => one.distance - other.distance)
    .slice(0, MOST_NEAR)
    .map(({ each }) => each);
  const family = known.filter((each) => each.startsWith(`${id.split(".")[0]!}.`));
  const families = [...new Set(known.map((each) => each.split(".")[0]!))];
  const remedy =
    near.length > 0
      ? `give one of those near it: ${near.join(", ")}`
      : family.length > 0
        ? `give one of that family: ${family.join(", ")}`
        : `give a function of one of the families: ${families.join(", ")}`;
  return {
    kind: "unknown",
    call,
    argument: "the function",
    given: id,
    remedy,
    sentence: `the function is ${wordGiven(id)}; ${remedy}`,
    error: "#NAME?",
    meaning: "#NAME? means that the spreadsheet knows no function of this name.",
  };
}

/** Letters to change, add or leave out to come from one word to the other. */
function editDistance(one: string, other: string): number {
  let before = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let i = 1; i <= one.length; i++) {
    const row = [i];
    for (let j = 1; j <= other.length; j++) {
      const changed = before[j - 1]! + (one[i - 1] === other[j - 1] ? 0 : 1);
      row.push(Math.min(changed, before[j]! + 1, row[j - 1]! + 1));
    }
    before = row;
  }
  return before[other.length]!;
}
