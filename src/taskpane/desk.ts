/**
 * One thing at a time in the workbook: what is going on is told, long work can be stopped, and what goes wrong is said
 * in words with what it was to be.
 */
import type { Host, Progress } from "../hosts/host";
import { button, element } from "./dom";

export interface Desk {
  readonly status: HTMLElement;
  readonly busy: boolean;
  readonly host: Host | null;
  readonly connect: (host: Host) => void;
  readonly say: (...said: (Node | string)[]) => void;
  readonly doing: (what: string, notDone: string, action: (host: Host) => Promise<void>) => Promise<void>;
  /** The same for work that can be stopped half-way, with nothing left of it. */
  readonly doingLong: (
    what: string,
    notDone: string,
    action: (host: Host, progress: Progress) => Promise<void>,
  ) => Promise<void>;
}

/** What is over sooner than this is not worth a bar. */
const LONG_MS = 400;

/** `changed`: called when work begins and ends, and when the spreadsheet is there. */
export function deskOf(changed: () => void): Desk {
  const status = element("div", { class: "status", role: "status", tabindex: "-1" });
  let host: Host | null = null;
  let busy = false;

  const desk: Desk = {
    status,
    get busy() {
      return busy;
    },
    get host() {
      return host;
    },
    connect(connected) {
      host = connected;
      changed();
    },
    say(...said) {
      const isIn = status.contains(document.activeElement);
      status.replaceChildren(...said);
      // the button that was pressed is gone: the keyboard goes on from here
      if (isIn) status.focus();
    },
    doing: (what, notDone, action) => work(what, notDone, action),
    doingLong: (what, notDone, action) => {
      if (busy) return Promise.resolve();
      const { progress, end } = watched(what, desk.say);
      return work(what, notDone, (at) => action(at, progress)).finally(end);
    },
  };

  async function work(what: string, notDone: string, action: (host: Host) => Promise<void>): Promise<void> {
    if (busy || host === null) return;
    busy = true;
    const pressed = document.activeElement;
    desk.say(`${what} …`);
    changed();
    try {
      await action(host);
    } catch (error) {
      desk.say(`${notDone} ${error instanceof Error ? error.message : String(error)}`);
    } finally {
      busy = false;
      changed();
      // a button that was disabled meanwhile has lost the keyboard
      if (document.activeElement === document.body && pressed instanceof HTMLElement) pressed.focus();
    }
  }
  return desk;
}

/** Shows a bar, and a way to stop, once the work takes long. */
function watched(what: string, say: Desk["say"]): { readonly progress: Progress; readonly end: () => void } {
  const stopping = new AbortController();
  const bar = element("progress", { "aria-label": what });
  const stop = button("Stop");
  stop.addEventListener("click", () => {
    stop.disabled = true;
    stopping.abort(new Error("It was stopped, and nothing is left of it."));
  });
  const late = setTimeout(() => say(`${what} … `, bar, " ", stop), LONG_MS);
  return {
    progress: {
      signal: stopping.signal,
      tell(done, of) {
        bar.max = of;
        bar.value = done;
      },
    },
    end: () => clearTimeout(late),
  };
}
