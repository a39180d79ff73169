/**
 * The field of one argument: what it is and in which unit, what blank means, and what is to be mended.
 */
import { element } from "./dom";
import { kindOf, typedArgument, type Argument, type Reference } from "./function-argument";
import { defaultIn, unitAndRest } from "./function-search";

export interface ArgumentField {
  readonly element: HTMLElement;
  readonly input: HTMLInputElement;
  fill(typed: string): void;
  /** What is to be mended in what is typed, if anything is. */
  problem(): string | undefined;
  formula(): string;
  reference(): Reference | undefined;
  /** Shows what is to be mended, or nothing. */
  show(problem: string | undefined): void;
}

const EXAMPLES = { number: "", truth: "", text: "", date: "2026-03-31", range: "B2:B9" } as const;

export function argumentField(argument: Argument): ArgumentField {
  const { name, description, optional } = argument;
  const { unit, rest } = unitAndRest(description);
  const id = (part: string) => `argument-${name}-${part}`;
  const blank = optional ? defaultIn(description) : undefined;
  const input = element("input", {
    id: id("input"),
    type: "text",
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
    placeholder: blank === undefined ? EXAMPLES[kindOf(argument)] : `blank = ${blank}`,
    "aria-required": optional ? undefined : "true",
    "aria-describedby": [id("unit"), id("note"), id("problem")].join(" "),
  });
  const message = element("p", { id: id("problem"), class: "problem", hidden: true });
  const typed = () => typedArgument(argument, input.value);

  function show(problem: string | undefined): void {
    message.hidden = problem === undefined;
    message.textContent = problem ?? "";
    if (problem === undefined) input.removeAttribute("aria-invalid");
    else input.setAttribute("aria-invalid", "true");
  }
  const problem = () => {
    const found = typed();
    return "problem" in found ? found.problem : undefined;
  };
  // what has been refused is looked at again with each key
  input.addEventListener("input", () => {
    if (!message.hidden) show(problem());
  });

  return {
    element: element(
      "div",
      { class: "field" },
      element(
        "label",
        { for: input.id },
        name,
        ...(optional ? [" ", element("span", { class: "optional" }, "optional")] : []),
      ),
      element("div", { class: "entry" }, input, element("span", { id: id("unit"), class: "unit" }, unit)),
      element("p", { id: id("note"), class: "note" }, rest),
      message,
    ),
    input,
    fill(text) {
      input.value = text;
      show(undefined);
    },
    problem,
    formula() {
      const found = typed();
      return "formula" in found ? found.formula : "";
    },
    reference() {
      const found = typed();
      return "formula" in found ? found.reference : undefined;
    },
    show,
  };
}
