/**
 * The pane: form, preview and the one action. It is the same in Excel and in the workbench.
 */
import { problemSentence } from "../cellar/batch/problem";
import type { Host } from "../hosts/host";
import { CHECKS_HEADING } from "../workbook/plan/checks";
import { planSheet } from "../workbook/plan/sheet";
import { element } from "./dom";
import { batchForm } from "./form";
import { looksLikeBatch, mendingSentence, planned, withoutPlace, type Planned } from "./planned";
import { previewOf } from "./preview";
import { workingSection } from "./working";

export interface Pane {
  /** Connects the spreadsheet; until then the pane calculates but cannot write. */
  connect(host: Host): void;
  /** Says in words why there is no spreadsheet. */
  explain(reason: string): void;
}

export function openPane(root: HTMLElement, example: unknown): Pane {
  let host: Host | null = null;
  let current: Planned = { problems: [] };
  let writing = false;

  const preview = element("section", {
    class: "preview",
    "aria-label": "Figures of the form",
    "aria-live": "polite",
  });
  const status = element("p", { class: "status", role: "status" });
  const say = (words: string, ...more: Node[]) => status.replaceChildren(words, ...more);
  const write = element("button", { type: "button", class: "write", disabled: true }, "Write the plan");
  const form = batchForm(() => {
    say("");
    update();
  });
  const openFile = element("input", {
    type: "file",
    accept: ".json,application/json",
    id: "batch-file",
    class: "visually-hidden",
  });
  const keep = element("button", { type: "button" }, "Keep as a file");
  const empty = element("button", { type: "button" }, "Empty");
  const working = workingSection();
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
      ),
    ),
    working.element,
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
        : element("p", { class: "verdict" }, mendingSentence(problems)),
      ...elsewhere.map((problem) => element("p", { class: "problem" }, problemSentence(problem))),
    );
    write.disabled = writing || host === null || !("plan" in current);
  }

  async function writePlan(): Promise<void> {
    if (writing || host === null || !("plan" in current)) return;
    const { inputs, plan } = current;
    writing = true;
    say("Writing …");
    update();
    try {
      const sheet = planSheet(inputs, plan, await host.sheetNames());
      await host.write({ sheets: [sheet] });
      const row = sheet.cells.find(({ value }) => value === CHECKS_HEADING)!.row + 1;
      say(
        `Written to ${host.name}: sheet “${sheet.name}”. Look at its checks first, from row ${row}: the worst is “${plan.worst}”.`,
      );
    } catch (error) {
      say(`The plan was not written. ${error instanceof Error ? error.message : String(error)}`);
    } finally {
      writing = false;
      update();
    }
  }

  async function readFile(file: File): Promise<void> {
    try {
      const batch: unknown = JSON.parse(await file.text());
      if (!looksLikeBatch(batch)) {
        say(`${file.name} is not a batch file: it has none of a batch's sections. The form is as it was.`);
        return;
      }
      form.fill(batch);
      const left = withoutPlace(batch);
      say(
        `Opened ${file.name}.${left.length === 0 ? "" : ` Not taken, as there are no such fields: ${left.join(", ")}.`}`,
      );
      update();
    } catch {
      say(`${file.name} is not a batch file: it is not JSON. The form is as it was.`);
    } finally {
      openFile.value = "";
    }
  }

  /** The form as a batch file, to be opened again another day or given to the command line. */
  function keepFile(): void {
    const content = JSON.stringify(form.given(), null, 2);
    const link = element("a", {
      download: "batch.json",
      href: URL.createObjectURL(new Blob([content], { type: "application/json" })),
    });
    link.click();
    URL.revokeObjectURL(link.href);
    say("Kept as batch.json, as the form stands.");
  }

  function emptyForm(): void {
    const before = form.given("hidden too");
    form.fill({});
    const back = element("button", { type: "button" }, "Bring it back");
    back.addEventListener("click", () => {
      form.fill(before);
      say("");
      update();
    });
    say("Emptied; fields with a usual value show it. ", back);
    update();
  }

  // the second click of a double click is not a second order
  write.addEventListener("click", (event) => void (event.detail > 1 ? undefined : writePlan()));
  openFile.addEventListener("change", () => {
    const file = openFile.files?.[0];
    if (file) void readFile(file);
  });
  keep.addEventListener("click", keepFile);
  empty.addEventListener("click", emptyForm);

  form.fill(example);
  update();
  return {
    connect(connected) {
      host = connected;
      working.follow(host);
      say("");
      update();
    },
    explain: (reason) => say(reason),
  };
}
