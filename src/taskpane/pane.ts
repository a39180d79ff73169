/**
 * The pane: form, preview, and what it does in the workbook. It is the same in Excel and in the workbench.
 */
import type { Host } from "../hosts/host";
import { keepBatchFile } from "./batch-files";
import type { Command } from "./commands";
import { deskOf } from "./desk";
import { button, element } from "./dom";
import { batchForm } from "./form";
import { formulasChoice } from "./formulas-choice";
import { freezeSection } from "./freeze";
import { functionSection } from "./function-list";
import { languageChoice } from "./language";
import { lazySection } from "./lazy-section";
import { fileOpener } from "./opened-files";
import { planned, type Planned } from "./planned";
import { plansSection } from "./plans";
import { previewSection } from "./preview";
import { errandsAt } from "./sheet-errands";
import { Units } from "./units";
import { welcome } from "./welcome";
import { workingSection } from "./working";

export interface Pane {
  /** Connects the spreadsheet; until then the pane calculates but cannot write. */
  connect(host: Host): void;
  /** Says in words why there is no spreadsheet. */
  explain(reason: string): void;
  /** What a button outside the pane asks for. */
  command(wanted: Command): void;
}

const COPY = " copy";

/** Invented batches to look at and to throw away. */
export type Example = { readonly batch: { readonly name: string } };

export function openPane(root: HTMLElement, examples: readonly [Example, ...Example[]]): Pane {
  const units = new Units();
  let current: Planned = { problems: [] };
  /** The plan's sheet that the form was read from, or written to. */
  let readFrom: string | null = null;
  /** The invented batch that the form began as; under another name it is the user's own. */
  let example: Example | null = examples[0];

  const desk = deskOf(() => update());
  const plans = plansSection();
  const language = languageChoice([root, ...document.querySelectorAll(".bar")], () => update());
  const errands = errandsAt(desk, plans, language.sheets);
  const preview = previewSection(units);
  const formulas = formulasChoice();
  const form = batchForm(units, () => {
    if (!desk.busy) desk.say("");
    update();
  });
  units.onChange(() => update());

  const write = button("Write the plan", { class: "write", disabled: true });
  const updateSheet = button("Update the sheet", { hidden: true });
  const copy = button("Copy as a new batch", { hidden: true });
  const keep = button("Keep as a file");
  const empty = button("Empty");
  const openFile = fileOpener(desk.say, (batch, said) => newForm(said, batch));
  /** What was put into the form last, with the way back: it stays until something else is put in. */
  const replaced = element("div", { class: "status replaced", role: "status" });
  const offered = exampleList(examples);
  const working = workingSection();
  const functions = functionSection();
  const whatIf = lazySection("What if", "what-if", async () => {
    const { variantsSection } = await import("./variants");
    return variantsSection(units, (batch, said) =>
      replaceForm(`${said} `, () => {
        if ("plan" in current) form.change(current.inputs, batch);
        else form.fill(batch);
      }),
    );
  });
  const bench = lazySection("Dosage bench", "bench", async () => {
    const { benchSection } = await import("./bench");
    return benchSection(units, (sweetness) => form.set("dosage.target_gL", sweetness));
  });
  form.add("dosage", bench.element);
  // a trial is typed beside the form, not into it
  bench.element.addEventListener("input", (event) => event.stopPropagation());

  root.replaceChildren(
    element(
      "header",
      {},
      element("div", { class: "head" }, element("h1", {}, "Plan a batch"), language.element),
      element(
        "div",
        { class: "actions" },
        element("label", { for: openFile.id, class: "button" }, "Open a file"),
        openFile,
        keep,
        empty,
        offered,
      ),
    ),
    element(
      "div",
      { class: "sections" },
      ...[
        welcome(
          () => emptyForm(),
          () => form.focus(),
        ),
      ].filter((part) => part !== null),
      plans.element,
      working.element,
      form.element,
      whatIf.element,
      functions.element,
      freezeSection(desk),
      furtherReading(),
    ),
    element(
      "footer",
      {},
      preview.element,
      element("div", { class: "actions" }, write, updateSheet, copy),
      formulas.element,
      replaced,
      desk.status,
    ),
  );

  function update(): void {
    current = planned(form.given());
    preview.show(current, form.show(current));
    const inputs = "plan" in current ? current.inputs : null;
    whatIf.follow(inputs);
    bench.follow(inputs);
    write.disabled = updateSheet.disabled = desk.busy || desk.host === null || !("plan" in current);
    updateSheet.hidden = copy.hidden = readFrom === null;
    if (readFrom !== null) updateSheet.textContent = `Update “${readFrom}”`;
    write.textContent = readFrom === null ? "Write the plan" : "Write as another plan";
  }

  /** What was found out of the old batch is not the new one's. */
  function copyBatch(): void {
    const given = form.given("hidden too") as Example & Record<string, object>;
    newForm(
      "A new batch from the same inputs, without lot, readings, filled volume and actual figures; its dates and packs are still the old ones. ",
      {
        ...given,
        batch: { ...given.batch, name: `${given.batch.name}${COPY}`, lot: "" },
        readings: {},
        actual: {},
        disgorging: { ...given.disgorging, filled_mL: null },
      },
    );
  }

  const emptyForm = () => newForm("Emptied; fields with a usual value show it. ", {});

  /** Another batch, from a sheet or from elsewhere. */
  function newForm(said: string, batch: unknown, from: string | null = null): void {
    replaceForm(said, () => {
      form.fill(batch);
      readFrom = from;
      example = examples.find((each) => each === batch) ?? null;
    });
  }

  /** What stood in the form can be brought back. */
  function replaceForm(said: string, put: () => void): void {
    const before = { batch: form.given("hidden too"), usual: form.usual(), readFrom, example };
    put();
    const back = button("Bring the form back");
    back.addEventListener("click", () => {
      form.fill(before.batch, before.usual);
      ({ readFrom, example } = before);
      replaced.replaceChildren();
      update();
      form.focus();
    });
    replaced.replaceChildren(said, back);
    if (!desk.busy) desk.say("");
    update();
  }

  // the second click of a double click is not a second order
  const onClick = (on: HTMLButtonElement, action: () => unknown) =>
    on.addEventListener("click", (event) => void (event.detail > 1 ? undefined : action()));
  onClick(
    write,
    () =>
      "plan" in current &&
      errands.writePlan(
        current,
        formulas.chosen(),
        current.inputs.batch.name === example?.batch.name,
        (sheet) => {
          // values only do not follow, so there is nothing to bring up to date
          if (formulas.chosen() !== "values") readFrom = sheet;
        },
      ),
  );
  onClick(
    updateSheet,
    () => readFrom !== null && "plan" in current && errands.update(readFrom, current.inputs),
  );
  onClick(plans.read, () => {
    const name = plans.chosen();
    if (name !== undefined) void errands.readSheet(name, (batch, said) => newForm(said, batch, name));
  });
  onClick(plans.season, () => errands.writeSeason(formulas.chosen()));
  onClick(plans.again, () => errands.lookForPlans());
  copy.addEventListener("click", copyBatch);
  keep.addEventListener("click", () => desk.say(keepBatchFile(form.given())));
  empty.addEventListener("click", emptyForm);
  offered.addEventListener("change", () => {
    const chosen = examples[Number(offered.value)];
    offered.value = "";
    if (chosen) newForm(`${chosen.batch.name}: an invented batch, to look at and to throw away. `, chosen);
  });

  form.fill(examples[0]);
  update();
  return {
    connect(host) {
      desk.connect(host);
      working.follow(host);
      functions.follow(host);
      formulas.follow(host);
      plans.show([]);
      root.querySelector<HTMLElement>(".freeze")!.hidden = false;
      desk.say("");
      void errands.lookForPlans();
    },
    explain: (reason) => desk.say(reason),
    command(wanted) {
      if (wanted === "new-plan") {
        emptyForm();
        form.focus();
      }
      if (wanted === "season") plans.open();
      if (wanted === "functions") functions.open();
    },
  };
}

/** Beside the page; opened in a browser, so that the pane stays. */
function furtherReading(): HTMLElement {
  const link = (href: string, words: string) =>
    element("a", { href, target: "_blank", rel: "noopener" }, words);
  return element(
    "p",
    { class: "further" },
    link("guide/index.html", "Guide"),
    link("help/index.html", "Help for the functions"),
    link("licences.txt", "Licences"),
  );
}

function exampleList(examples: readonly Example[]): HTMLSelectElement {
  return element(
    "select",
    { "aria-label": "Examples", class: "examples" },
    element("option", { value: "" }, "Examples …"),
    ...examples.map(({ batch }, index) => element("option", { value: String(index) }, batch.name)),
  );
}
