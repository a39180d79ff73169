/**
 * The pane: form, preview and the one action. It is the same in Excel and in the workbench.
 */
import { UnplannableBatch } from "../cellar/batch/attempt";
import { placedFields } from "../cellar/batch/field-kinds";
import { parseBatchInputs } from "../cellar/batch/inputs";
import { fields, type BatchInputs } from "../cellar/batch/fields";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import { planBatch, type BatchPlan } from "../cellar/batch/plan";
import type { Host } from "../hosts/host";
import { planSheet } from "../workbook/plan/sheet";
import { element } from "./dom";
import { batchForm } from "./form";
import { previewOf } from "./preview";

type Planned =
  { readonly inputs: BatchInputs; readonly plan: BatchPlan } | { readonly problems: readonly Problem[] };

function planned(given: unknown): Planned {
  const parsed = parseBatchInputs(given);
  if (!parsed.ok) return { problems: parsed.problems };
  try {
    return { inputs: parsed.inputs, plan: planBatch(parsed.inputs) };
  } catch (error) {
    if (error instanceof UnplannableBatch) return { problems: error.problems };
    throw error;
  }
}

/** What a file holds that the form has no place for. */
function unknownFields(batch: unknown): string {
  const parsed = parseBatchInputs(batch);
  const known = new Set(placedFields(fields).map((each) => each.dotted));
  return parsed.ok
    ? ""
    : parsed.problems
        .map(({ field }) => field)
        .filter((field) => !known.has(field))
        .join(", ");
}

export interface Pane {
  /** Connects the spreadsheet; until then the pane calculates but cannot write. */
  connect(host: Host): void;
  /** Says in words why there is no spreadsheet. */
  explain(reason: string): void;
}

export function openPane(root: HTMLElement, example: unknown): Pane {
  let host: Host | null = null;
  let current: Planned = { problems: [] };

  const preview = element("section", { class: "preview", "aria-label": "Preview", "aria-live": "polite" });
  const status = element("p", { class: "status", role: "status" });
  const write = element("button", { type: "button", class: "write", disabled: true }, "Write the plan");
  const form = batchForm(update);
  const openFile = element("input", {
    type: "file",
    accept: ".json,application/json",
    id: "batch-file",
    class: "visually-hidden",
  });
  const actions = element(
    "div",
    { class: "actions" },
    element("label", { for: "batch-file", class: "button" }, "Open a batch file"),
    openFile,
    element("button", { type: "button", class: "plain" }, "Empty the form"),
  );
  root.replaceChildren(
    element("header", {}, element("h1", {}, "Plan a batch"), actions),
    form.element,
    element("footer", {}, preview, write, status),
  );

  function update(): void {
    current = planned(form.given());
    const problems = "problems" in current ? current.problems : [];
    const elsewhere = form.show(problems);
    preview.replaceChildren(
      "plan" in current
        ? previewOf(current.inputs, current.plan)
        : element(
            "p",
            { class: "verdict" },
            `${problems.length} ${problems.length === 1 ? "field needs" : "fields need"} mending before there is a plan.`,
          ),
      ...elsewhere.map((problem) => element("p", { class: "problem" }, problemSentence(problem))),
    );
    write.disabled = host === null || !("plan" in current);
  }

  async function writePlan(): Promise<void> {
    if (host === null || !("plan" in current)) return;
    const { inputs, plan } = current;
    write.disabled = true;
    status.textContent = "Writing …";
    try {
      const sheet = planSheet(inputs, plan, await host.sheetNames());
      await host.write({ sheets: [sheet] });
      status.textContent = `Written to ${host.name}: sheet “${sheet.name}”. Look at its Checks first: the worst is “${plan.worst}”.`;
    } catch (error) {
      status.textContent = `Nothing was written. ${error instanceof Error ? error.message : String(error)}`;
    } finally {
      update();
    }
  }

  async function readFile(file: File): Promise<void> {
    try {
      const batch: unknown = JSON.parse(await file.text());
      form.fill(batch);
      const left = unknownFields(batch);
      status.textContent = `Opened ${file.name}.${left === "" ? "" : ` Not taken, as there are no such fields: ${left}.`}`;
    } catch {
      status.textContent = `${file.name} is not a batch file: it is not JSON. The form is as it was.`;
    }
    openFile.value = "";
    update();
  }

  write.addEventListener("click", () => void writePlan());
  openFile.addEventListener("change", () => {
    const file = openFile.files?.[0];
    if (file) void readFile(file);
  });
  actions.querySelector("button")!.addEventListener("click", () => {
    form.fill({});
    status.textContent = "The form is empty but for what a blank means.";
    update();
  });

  form.fill(example);
  update();
  return {
    connect(connected) {
      host = connected;
      status.textContent = "";
      update();
    },
    explain(reason) {
      status.textContent = reason;
    },
  };
}
