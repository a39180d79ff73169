/**
 * The first time: what the pane is for, with an invented batch to look at and to throw away.
 */
import { button, element } from "./dom";

const KEY = "mousse.begun";

/** Whether this person has begun before; where the browser keeps nothing, every time is the first. */
function hasBegun(): boolean {
  try {
    return window.localStorage.getItem(KEY) !== null;
  } catch {
    return false;
  }
}

function begin(): void {
  try {
    window.localStorage.setItem(KEY, "yes");
  } catch {
    // it greets again the next time
  }
}

/** Nothing for who has begun before. `empty`: begins a batch of one's own; `goOn`: to the form. */
export function welcome(empty: () => void, goOn: () => void): HTMLElement | null {
  if (hasBegun()) return null;
  const own = button("Begin a batch of my own");
  const look = button("Look around first");
  const section = element(
    "section",
    { class: "welcome", "aria-label": "Welcome" },
    element(
      "p",
      {},
      "Below stands an invented batch of estate Oxlip Hill. Change anything and watch the figures; write the plan to see its sheets, and throw them away again.",
    ),
    element(
      "p",
      { class: "note" },
      "Filled bottles can burst. These are estimates: the glass maker's rating, local law and a licensed oenologist decide.",
    ),
    element("div", { class: "actions" }, own, look),
  );
  const close = () => {
    begin();
    section.remove();
    goOn();
  };
  own.addEventListener("click", () => {
    empty();
    close();
  });
  look.addEventListener("click", close);
  return section;
}
