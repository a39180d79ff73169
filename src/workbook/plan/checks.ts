/**
 * Section Checks: what, value, limit, verdict in words, source.
 */
import { checkWords } from "../../cellar/batch/check-words";
import { CHECK_KEYS, type CheckKey } from "../../cellar/batch/checks";
import { RECORDED } from "../../cellar/rules/source";
import { builtin, cell, iff, operation, plus, range, type Expression } from "../formula";
import type { CellSpec, Row } from "../layout";
import { checkRows } from "./check-rows";
import { byRules, type CheckRow } from "./check-rules";
import { columnHeads, heading, resultCell, text, type Batch, type Section } from "./rows";

export const CHECKS_HEADING = "Checks";

export const checksSection: Section = (batch) => [
  ...heading(CHECKS_HEADING),
  {
    cells: [
      text(
        `Limits recorded ${RECORDED}: (read) seen in the text, (secondary) in a text about it, (memory) not seen again. Only a limit may be typed over.`,
        "note",
      ),
    ],
  },
  columnHeads("What", ">Value", "~Unit", ">Limit", "~Verdict", "Source"),
  ...CHECK_KEYS.map((key) => checkRow(key, batch)),
];

const verdictName = (key: CheckKey) => `plan_check_${key}`;

function checkRow(key: CheckKey, batch: Batch): Row {
  const { plan } = batch;
  const { what, unit } = checkWords(key);
  const { value, format, limit, verdict, source } = checkRows[key];
  const check = plan.checks[key];
  const valueName = `plan_check_${key}_value`;
  const limitName = `plan_check_${key}_limit`;
  const numberFormat = format === undefined ? {} : { format };
  const limitCell =
    typeof limit === "number"
      ? { key: limitName, value: limit, style: "result" as const, ...numberFormat }
      : resultCell({ key: limitName, value: check.limit, formula: limit!, ...numberFormat });
  return {
    cells: [
      text(what, "label"),
      resultCell({ key: valueName, value: check.value, formula: value, ...numberFormat }),
      text(unit, "unit"),
      limit === undefined ? undefined : limitCell,
      resultCell({
        name: verdictName(key),
        value: check.verdict,
        style: "verdict",
        judged: true,
        formula: builtin("IFERROR", verdict(cell(valueName), cell(limitName)), "stop"),
      }),
      sourceCell(source, batch),
    ],
  };
}

function sourceCell(source: CheckRow["source"], { inputs }: Batch): CellSpec {
  if (typeof source === "string") return text(source, "note");
  return { value: source(inputs.batch.rules), formula: byRules(source), style: "note" };
}

/** The worst of all verdicts, in words. */
export function worstOf(): Expression {
  const verdicts = range(verdictName(CHECK_KEYS[0]), verdictName(CHECK_KEYS[CHECK_KEYS.length - 1]!));
  return worstOfWords(verdicts, CHECK_KEYS.length);
}

/** What is neither "fine" nor "look again" is a stop: an error too, or a cell that was cleared. */
export function worstOfWords(verdicts: Expression, count: number): Expression {
  const said = (word: string) => builtin("COUNTIF", verdicts, word);
  return iff(
    operation(plus(said("fine"), said("look again")), "<", count),
    "stop",
    iff(operation(said("look again"), ">", 0), "look again", "fine"),
  );
}
