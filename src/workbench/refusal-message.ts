/**
 * The keys while a number out of range is refused. Whoever types on without looking must not close the message with the
 * Enter of the next number, nor have the numbers after it go into the refused cell; whoever has closed the message types
 * on in the cell, from the first key or not at all, so that no number loses its first digits.
 */
import type { Injector } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { IDialogService } from "@univerjs/preset-sheets-core";

/** The engine's name for the message. */
const REFUSAL = "reject-input-dialog";
/** After a character typed at the message, Enter and the space bar do not close it for so long. */
const UNSEEN_MS = 2000;
/** A hand that types while the cell gets its keys back has finished when it has been still for so long. */
const STILL_MS = 500;
const LOOK_MS = 20;

/** Someone who has gone to the pane, or to the row above the sheet, is left there. */
const elsewhere = () => Boolean(document.activeElement?.closest("#pane, .bar"));

const drop = (event: KeyboardEvent) => {
  event.preventDefault();
  event.stopImmediatePropagation();
};

export function guardRefusals(injector: Injector, api: FUniver): void {
  let open = false;
  let typed = -Infinity;
  let dropped: number | undefined;
  let returning = false;

  const unseen = ({ key, timeStamp }: KeyboardEvent) =>
    (key === "Enter" || key === " ") && timeStamp - typed < UNSEEN_MS;
  const onKey = (event: KeyboardEvent) => {
    if (elsewhere()) return;
    if (returning) {
      dropped = event.timeStamp;
      drop(event);
    } else if (open) {
      if (unseen(event) || event.repeat) drop(event);
      if (event.key.length === 1) typed = event.timeStamp;
    }
  };
  const giveBack = (gone: boolean) => {
    const moving = dropped !== undefined && performance.now() - dropped < STILL_MS;
    // the engine takes the keys away once more when the message has gone
    if (gone && !moving) {
      returning = false;
      if (!elsewhere()) api.getActiveWorkbook()?.getActiveSheet().getActiveRange()?.activate();
    } else setTimeout(() => giveBack(document.querySelector("[role=dialog]") === null), LOOK_MS);
  };

  window.addEventListener("keydown", onKey, true);
  // a button is pressed by the space bar when that is let go
  window.addEventListener("keyup", (event) => open && unseen(event) && drop(event), true);
  const dialogs = injector.get(IDialogService).getDialogs$();
  dialogs.subscribe((all) => {
    const isOpen = all.some((dialog) => dialog.id === REFUSAL && dialog.open);
    if (open && !isOpen) {
      returning = true;
      dropped = undefined;
      giveBack(false);
    }
    if (isOpen && !open) typed = -Infinity;
    open = isOpen;
  });
}
