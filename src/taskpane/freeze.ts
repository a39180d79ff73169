/**
 * A whole sheet as values only, for who wants its numbers to stand still.
 */
import type { Desk } from "./desk";
import { button, element } from "./dom";

export function freezeSection(desk: Desk): HTMLElement {
  const list = element("select", { id: "freeze-sheet" });
  const freeze = button("Keep its values only");
  const section = element(
    "details",
    { class: "freeze", hidden: true },
    element("summary", {}, "A sheet as values only"),
    element(
      "div",
      { class: "field" },
      element("label", { for: list.id }, "Sheet"),
      list,
      element("div", { class: "actions" }, freeze),
    ),
    element("p", { class: "note" }, "Each formula gives way to its result. You are asked before."),
  );

  async function names(): Promise<void> {
    const all = (await desk.host?.sheetNames()) ?? [];
    const before = list.value;
    list.replaceChildren(...all.map((name) => element("option", { value: name, translate: "no" }, name)));
    if (all.includes(before)) list.value = before;
  }
  section.addEventListener("toggle", () => {
    if (section.open) void names().catch(() => undefined);
  });

  const keepValues = (name: string) =>
    desk.doing("Keeping values", "The sheet is as it was.", async (host) => {
      const count = await host.freeze(name);
      const formulas = count === 1 ? "1 formula" : `${count} formulas`;
      desk.say(
        count === 0
          ? `“${name}” holds no formulas; nothing was changed.`
          : `“${name}” now holds values only: ${formulas} gave way.`,
      );
    });
  freeze.addEventListener("click", () => {
    const name = list.value;
    if (name === "" || desk.busy) return;
    const yes = button("Yes, values only");
    const no = button("Leave it");
    yes.addEventListener("click", () => void keepValues(name));
    no.addEventListener("click", () => desk.say("Nothing was changed."));
    const kept = desk.host?.keepsNotes() ?? false;
    desk.say(
      `Every formula of “${name}” would give way to its result; the sheet would not follow its inputs any more. `,
      kept
        ? "Each formula stays as a note on its cell. "
        : "This program keeps no notes: the formulas would be gone. Keep a copy of the workbook first. ",
      element("div", { class: "actions" }, yes, no),
    );
    no.focus();
  });
  return section;
}
