/**
 * The first checks: that the inputs of each section still hold what they may.
 */
import { INPUT_CHECKS, type InputCheck } from "../../cellar/batch/checks";
import { sectionOf } from "../../cellar/batch/check-words";
import type { fields } from "../../cellar/batch/fields";
import { atMost, type CheckRow } from "./check-rules";
import { sectionFaults } from "./input-faults";
import { FORMATS } from "./rows";

const checkOf = (section: keyof typeof fields): CheckRow => ({
  format: FORMATS.whole,
  value: sectionFaults(section),
  limit: 0,
  verdict: atMost("stop"),
  source: "blank, text, out of range or an unknown word",
});

export const inputChecks = Object.fromEntries(
  INPUT_CHECKS.map((key) => [key, checkOf(sectionOf(key))]),
) as Record<InputCheck, CheckRow>;
