/**
 * The pane: form, preview, and what it does in the workbook. It is the same in Excel and in the workbench.
 */
import { problemSentence } from "../cellar/batch/problem";
import type { Host } from "../hosts/host";
import { keepBatchFile, readBatchFile } from "./batch-files";
import { button, element } from "./dom";
import { batchForm } from "./form";
import { formulasChoice } from "./formulas-choice";
import { functionSection } from "./function-list";
import { mendingSentence, planned, type Planned } from "./planned";
import { planChoices, plansSection, updateOffer } from "./plans";
import { previewOf } from "./preview";
import { PLAN_MARK } from "../workbook/plan/read";
import { workingSection } from "./working";

export interface Pane {
  /** Connects the spreadsheet; until then the pane calculates but cannot write. */
  connect(host: Host): void;
  /** Says in words why there is no spreadsheet. */
  explain(reason: string): void;
}

const COPY = " copy";

/** What writes and reads plans is loaded when it is first asked for: the templates are the larger part of the pane. */
const actions = () => import("./workbook-actions");

/** Invented batches to look at and to throw away. */
export type Example = { readonly batch: { readonly name: string } };

const lacking = (unread: readonly string[]) =>
  unread.length === 0 ? "" : ` Not read, as the cell is gone or shows an error: ${unread.join(", ")}.`;

export function openPane(root: HTMLElement, examples: readonly [Example, ...Example[]]): Pane {
  let host: Host | null = null;
  let current: Planned = { problems: [] };
  let busy = false;
  /** The plan's sheet that the form was read from. */
  let readFrom: string | null = null;

  const preview = element("section", {
    class: "preview",
    "aria-label": "Figures of the form",
    "aria-live": "polite",
  });
  const status = element("div", { class: "status", role: "status" });
  const say = (...said: (Node | string)[]) => status.replaceChildren(...said);
  const write = button("Write the plan", { class: "write", disabled: true });
  const formulas = formulasChoice();
  const updateSheet = button("Update the sheet", { hidden: true });
  const copy = button("Copy as a new batch", { hidden: true });
  const form = batchForm(() => {
    say("");
    update();
  });
  const openFile = element("input", {
    type: "file",
    accept: ".json,.xlsx",
    id: "batch-file",
    class: "visually-hidden",
  });
  const keep = button("Keep as a file");
  const empty = button("Empty");
  const example = element(
    "select",
    { "aria-label": "Examples", class: "examples" },
    element("option", { value: "" }, "Examples …"),
    ...examples.map(({ batch }, index) => element("option", { value: String(index) }, batch.name)),
  );
  const plans = plansSection();
  const working = workingSection();
  const functions = functionSection();
  root.replaceChildren(
    element(
      "header",
      {},
      element("h1", {}, "Plan a batch"),
      element(
        "div",
        { class: "actions" },
        element("label", { for: openFile.id, class: "button" }, "Open a file"),
        openFile,
        keep,
        empty,
        example,
      ),
    ),
    plans.element,
    working.element,
    functions.element,
    form.element,
    element(
      "footer",
      {},
      preview,
      element("div", { class: "actions" }, write, updateSheet, copy),
      formulas.element,
      status,
    ),
  );

  function update(): void {
    current = planned(form.given());
    const problems = "problems" in current ? current.problems : [];
    const elsewhere = form.show(problems);
    preview.replaceChildren(
      "plan" in current
        ? previewOf(current.inputs, current.plan)
        : element("p", { class: "verdict" }, mendingSentence(problems)),
      ...elsewhere.map((problem) => element("p", { class: "problem" }, problemSentence(problem))),
    );
    const canWrite = !busy && host !== null && "plan" in current;
    write.disabled = updateSheet.disabled = !canWrite;
    updateSheet.hidden = copy.hidden = readFrom === null;
    if (readFrom !== null) updateSheet.textContent = `Update “${readFrom}”`;
    write.textContent = readFrom === null ? "Write the plan" : "Write as another plan";
  }

  /** One thing at a time in the workbook; what goes wrong is told, with what it was to be. */
  async function doing(what: string, notDone: string, action: (host: Host) => Promise<void>): Promise<void> {
    if (busy || host === null) return;
    busy = true;
    say(`${what} …`);
    update();
    try {
      await action(host);
    } catch (error) {
      say(`${notDone} ${error instanceof Error ? error.message : String(error)}`);
    } finally {
      busy = false;
      update();
    }
  }

  const lookForPlans = async (at: Host) =>
    plans.show((await at.sheetsNaming(PLAN_MARK)).map(({ name }) => name));

  const writePlan = () =>
    doing("Writing", "The plan was not written.", async (at) => {
      if (!("plan" in current)) return;
      const { inputs, plan } = current;
      say(await (await actions()).writeBatch(at, inputs, plan, formulas.chosen()));
      await lookForPlans(at);
    });

  const writeSeasonSheet = () =>
    doing("Writing", "The season was not written.", async (at) =>
      say(await (await actions()).writeSeason(at, formulas.chosen())),
    );

  const readSheet = () =>
    doing("Reading", "The plan was not read.", async (at) => {
      const name = plans.chosen();
      if (name === undefined) return;
      const { batch, unread } = await (await actions()).readPlan(at, name);
      replaceForm(
        `Read from “${name}”.${lacking(unread)} What you change here changes the sheet only when you update it. `,
        batch,
        name,
      );
    });

  /** First what would change; then, if the user says so, the change itself. */
  const showChanges = () =>
    doing("Comparing", "The sheet was not compared.", async (at) => {
      if (readFrom === null || !("plan" in current)) return;
      const { inputs } = current;
      const name = readFrom;
      const { changes, missing } = await (await actions()).compareWith(at, name, inputs);
      if (missing.length > 0) {
        throw new Error(`“${name}” has no cell for ${missing.join(", ")}; write another plan instead.`);
      }
      if (changes.length === 0) {
        say(`“${name}” holds all this already; there is nothing to change.`);
        return;
      }
      say(
        ...updateOffer(
          name,
          changes,
          () =>
            void doing("Changing", "Not updated.", async (there) => {
              say(await (await actions()).updatePlan(there, name, inputs, changes));
            }),
          () => say("Nothing was changed."),
        ),
      );
    });

  /** What was found out of the old batch is not the new one's. */
  function copyBatch(): void {
    const given = form.given("hidden too") as Example & Record<string, object>;
    replaceForm(
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

  async function openBatch(file: File): Promise<void> {
    openFile.value = "";
    if (/\.xlsx$/i.test(file.name)) return openWorkbook(file);
    const { batch, said } = await readBatchFile(file);
    if (batch === undefined) say(said);
    else replaceForm(`${said} `, batch);
  }

  /** The plans of a workbook, whichever program saved it: one goes into the form, of several one is chosen. */
  async function openWorkbook(file: File): Promise<void> {
    try {
      const { plansInFile } = await actions();
      const found = await plansInFile(new Uint8Array(await file.arrayBuffer()));
      const take = ({ name, batch, unread }: (typeof found)[number]) =>
        replaceForm(
          `Read from “${name}” of ${file.name}.${lacking(unread)} Write it as a plan of this workbook. `,
          batch,
        );
      const [only, ...more] = found;
      if (only && more.length === 0) take(only);
      else say(...planChoices(file.name, found, take));
    } catch (error) {
      say(`${file.name} was not read: ${error instanceof Error ? error.message : String(error)}`);
    }
  }

  const emptyForm = () => replaceForm("Emptied; fields with a usual value show it. ", {});

  /** What stood in the form can be brought back. */
  function replaceForm(said: string, batch: unknown, from: string | null = null): void {
    const before = { form: form.given("hidden too"), readFrom };
    form.fill(batch);
    readFrom = from;
    const back = button("Bring the form back");
    back.addEventListener("click", () => {
      form.fill(before.form);
      readFrom = before.readFrom;
      say("");
      update();
    });
    say(said, back);
    update();
  }

  // the second click of a double click is not a second order
  const onClick = (on: HTMLButtonElement, action: () => Promise<void>) =>
    on.addEventListener("click", (event) => void (event.detail > 1 ? undefined : action()));
  onClick(write, writePlan);
  onClick(updateSheet, showChanges);
  onClick(plans.read, readSheet);
  onClick(plans.season, writeSeasonSheet);
  onClick(plans.again, () =>
    doing("Looking", "The workbook was not read.", async (at) => {
      await lookForPlans(at);
      say("");
    }),
  );
  copy.addEventListener("click", copyBatch);
  openFile.addEventListener("change", () => {
    const file = openFile.files?.[0];
    if (file) void openBatch(file);
  });
  keep.addEventListener("click", () => say(keepBatchFile(form.given())));
  empty.addEventListener("click", emptyForm);
  example.addEventListener("change", () => {
    const chosen = examples[Number(example.value)];
    example.value = "";
    if (chosen)
      replaceForm(`${chosen.batch.name}: an invented batch, to look at and to throw away. `, chosen);
  });

  form.fill(examples[0]);
  update();
  return {
    connect(connected) {
      host = connected;
      working.follow(host);
      functions.follow(host);
      plans.show([]);
      say("");
      update();
      void doing("Looking for plans", "The workbook was not read.", async (at) => {
        await lookForPlans(at);
        say("");
      });
    },
    explain: (reason) => say(reason),
  };
}
