/**
 * What the pane's buttons do in the workbook. What writes and reads plans is loaded when it is first asked for: the
 * templates are the larger part of the pane.
 */
import type { BatchInputs } from "../cellar/batch/fields";
import type { BatchPlan } from "../cellar/batch/plan";
import { PLAN_MARK } from "../workbook/plan/read";
import type { Formulas } from "../workbook/book";
import type { SheetLanguage } from "../words/sheet-language";
import type { Desk } from "./desk";
import { button, element } from "./dom";
import { updateOffer, type PlansSection } from "./plans";

const actions = () => import("./workbook-actions");

export interface Current {
  readonly inputs: BatchInputs;
  readonly plan: BatchPlan;
}

export interface Errands {
  lookForPlans(): Promise<void>;
  /** `example`: what is written is an invented batch, and can be taken away again. */
  writePlan(
    current: Current,
    formulas: Formulas,
    example: boolean,
    written: (sheet: string) => void,
  ): Promise<void>;
  writeSeason(formulas: Formulas): Promise<void>;
  readSheet(name: string, into: (batch: unknown, said: string) => void): Promise<void>;
  /** First what would change; then, if the user says so, the change itself. */
  update(name: string, inputs: BatchInputs): Promise<void>;
}

export const lacking = (unread: readonly string[]) =>
  unread.length === 0 ? "" : ` Not read, as the cell is gone or shows an error: ${unread.join(", ")}.`;

/** `language`: that in which sheets are written where there are none yet. */
export function errandsAt(desk: Desk, plans: PlansSection, language: () => Promise<SheetLanguage>): Errands {
  const { say, doing, doingLong } = desk;

  const listPlans = async () => {
    const sheets = (await desk.host?.sheetsNaming(PLAN_MARK)) ?? [];
    plans.show(sheets.map(({ name }) => name));
  };

  /** Only what was just written, and only if it is asked for, twice. */
  function throwAway(sheets: readonly string[]): HTMLElement {
    const named = sheets.map((name) => `“${name}”`).join(", ");
    const goAway = () =>
      doing("Throwing away", "Not all of the example could be thrown away.", async (host) => {
        await host.remove(sheets);
        await listPlans();
        say(`The example is gone: ${named}.`);
      });
    const away = button("Throw the example away");
    away.addEventListener("click", () => {
      const yes = button("Yes, delete them");
      const no = button("Keep them");
      yes.addEventListener("click", () => void goAway());
      no.addEventListener("click", () => say("Nothing was deleted."));
      say(
        `This deletes ${named}, and whatever was typed into them or reads from them. `,
        element("div", { class: "actions" }, yes, no),
      );
      no.focus();
    });
    return element("div", { class: "actions" }, away);
  }

  return {
    lookForPlans: () =>
      doing("Looking for plans", "The workbook was not read.", async () => {
        await listPlans();
        say("");
      }),
    writePlan: ({ inputs, plan }, formulas, example, wrote) =>
      doingLong("Writing", "The plan was not written.", async (host, progress) => {
        const written = await (
          await actions()
        ).writeBatch(host, inputs, plan, formulas, progress, await language());
        await listPlans();
        wrote(written.sheets[0]!);
        say(written.said, ...(example ? [throwAway(written.sheets)] : []));
      }),
    writeSeason: (formulas) =>
      doingLong("Writing", "The season was not written.", async (host, progress) =>
        say(await (await actions()).writeSeason(host, formulas, progress)),
      ),
    readSheet: (name, into) =>
      doing("Reading", "The plan was not read.", async (host) => {
        const { batch, unread, live } = await (await actions()).readPlan(host, name);
        const then = live
          ? "What you change here changes the sheet only when you update it."
          : "It holds values only, which cannot be updated: write another plan.";
        into(batch, `Read from “${name}”.${lacking(unread)} ${then} `);
      }),
    update: (name, inputs) =>
      doing("Comparing", "The sheet was not compared.", async (host) => {
        const { changes, missing } = await (await actions()).compareWith(host, name, inputs);
        if (missing.length > 0) {
          throw new Error(`“${name}” has no cell for ${missing.join(", ")}; write another plan instead.`);
        }
        if (changes.length === 0) {
          say(`“${name}” holds all this already; there is nothing to change.`);
          return;
        }
        const change = () =>
          doing("Changing", "Not updated.", async (there) => {
            say(await (await actions()).updatePlan(there, name, inputs, changes));
          });
        say(
          ...updateOffer(
            name,
            changes,
            () => void change(),
            () => say("Nothing was changed."),
          ),
        );
      }),
  };
}
