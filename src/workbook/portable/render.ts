/**
 * The portable dialect: the same rows with every call of our functions worked out in formulas that any spreadsheet
 * program has, and the steps in a block at the end. Nothing else moves, so a cell has the same address in both.
 */
import { quotedSheet, cellAddress } from "../data";
import { builtin, type Expression } from "../formula";
import type { CellSpec, Rendering, Row } from "../layout";
import type { Place } from "../linked-plan";
import { LIVE_ANYWHERE, LIVE_WITH_ADDIN } from "../plan/glance";
import { gap, text } from "../plan/rows";
import { ageingForms, tableForms } from "./ageing";
import { amountForms } from "./amounts";
import { constants } from "./constants";
import type { ConstantKey, Form, Steps } from "./form";
import { pressureForms } from "./pressure";
import { readingForms } from "./readings";
import { sweetnessForms } from "./sweetness";

export const forms: Readonly<Record<string, Form>> = {
  ...amountForms,
  ...pressureForms,
  ...readingForms,
  ...sweetnessForms,
  ...ageingForms,
};

export const WORKINGS_HEADING = "Workings, for programs without the add-in";
const stepName = (count: number) => `working_${count}`;
const constantName = (key: ConstantKey) => `working_${key}`;
const notesName = (name: string) => `notes:${name}`;

/** Formulas for any spreadsheet program; what they read of regulation stands in the notes. */
export const portable = (notes: {
  readonly sheet: string;
  readonly places: ReadonlyMap<string, Place>;
}): Rendering => ({
  rows: portableRows,
  elsewhere: inNotes(notes.sheet, notes.places),
});

function portableRows(rows: readonly Row[]): Row[] {
  const workings = new Workings();
  const rewritten = rows.map((row) => ({
    ...row,
    cells: row.cells.map((spec) => {
      if (spec?.value === LIVE_WITH_ADDIN) return { ...spec, value: LIVE_ANYWHERE };
      return spec?.formula ? { ...spec, formula: workings.portable(spec.formula) } : spec;
    }),
  }));
  return [...rewritten, ...workings.rows()];
}

/** Where the notes are, for formulas that read them. */
const inNotes =
  (sheet: string, places: ReadonlyMap<string, Place>) =>
  (name: string): string | undefined => {
    const [, wanted] = /^notes:(.+)$/.exec(name) ?? [];
    if (wanted === undefined) return undefined;
    const place = places.get(wanted);
    if (!place) throw new Error(`the notes have no cell ${wanted}`);
    return `${quotedSheet(sheet)}!${cellAddress(place.row, place.column)}`;
  };

class Workings {
  readonly #rows: Row[] = [];
  /** The same step is written once, whoever asks. */
  readonly #known = new Map<string, Expression>();
  readonly #constants = new Map<ConstantKey, Row>();

  readonly #steps: Steps = {
    step: (label, unit, formula) => {
      const made: Expression = typeof formula === "object" ? formula : { kind: "literal", value: formula };
      const key = JSON.stringify(made);
      const known = this.#known.get(key);
      if (known) return known;
      const name = stepName(this.#rows.length + 1);
      this.#rows.push(
        workingRow(label, unit, { key: name, value: null, formula: orBlank(made), style: "result" }),
      );
      const cell: Expression = { kind: "cell", name };
      this.#known.set(key, cell);
      return cell;
    },
    constant: (key) => {
      const { label, unit, value } = constants[key];
      this.#constants.set(key, workingRow(label, unit, { key: constantName(key), value, style: "result" }));
      return { kind: "cell", name: constantName(key) };
    },
    notes: (name) => ({ kind: "cell", name: notesName(name) }),
    notesRange: (first, last) => ({ kind: "range", first: notesName(first), last: notesName(last) }),
  };

  portable(expression: Expression): Expression {
    switch (expression.kind) {
      case "mousse":
        return this.#results(expression)[0]!;
      case "builtin":
        return (
          this.#indexed(expression) ?? {
            ...expression,
            args: expression.args.map((arg) => this.portable(arg)),
          }
        );
      case "operation":
        return {
          ...expression,
          left: this.portable(expression.left),
          right: this.portable(expression.right),
        };
      default:
        return expression;
    }
  }

  rows(): Row[] {
    if (this.#rows.length + this.#constants.size === 0) return [];
    return [
      gap,
      { cells: [text(WORKINGS_HEADING, "heading"), text("", "heading"), text("", "heading")] },
      ...this.#constants.values(),
      ...this.#rows,
    ];
  }

  #results({ id, args }: Extract<Expression, { kind: "mousse" }>): readonly Expression[] {
    const form = forms[id];
    if (!form) throw new Error(`${id} has no portable form`);
    const made = form(
      args.map((arg) => this.portable(arg)),
      this.#steps,
    );
    return Array.isArray(made) ? (made as readonly Expression[]) : [made as Expression];
  }

  /** One cell of what a function answers: INDEX(call, row, column). */
  #indexed({ id, args }: Extract<Expression, { kind: "builtin" }>): Expression | undefined {
    const [call, row, column] = args;
    if (id !== "INDEX" || call?.kind !== "mousse" || !row || column?.kind !== "literal") return undefined;
    const table = tableForms[call.id];
    if (table) {
      return table(
        call.args.map((arg) => this.portable(arg)),
        this.portable(row),
        Number(column.value),
        this.#steps,
      );
    }
    const result = this.#results(call)[Number(column.value) - 1];
    if (!result) throw new Error(`${call.id} has no portable column ${String(column.value)}`);
    return result;
  }
}

/** What a choice leaves unused is blank, not an error; whatever is built on it still has no answer. */
const orBlank = (formula: Expression) => builtin("IFERROR", formula, "");

const workingRow = (label: string, unit: string, cell: CellSpec): Row => ({
  cells: [text(label, "label"), cell, text(unit, "unit")],
});
