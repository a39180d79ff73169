/**
 * A part of the pane that is loaded when it is first opened.
 */
import type { BatchInputs } from "../cellar/batch/fields";
import { element } from "./dom";

interface Follower {
  readonly element: HTMLElement;
  follow(inputs: BatchInputs | null): void;
}

export interface LazySection {
  readonly element: HTMLElement;
  /** Passed on once it is there. */
  follow(inputs: BatchInputs | null): void;
}

export function lazySection(title: string, className: string, load: () => Promise<Follower>): LazySection {
  const body = element("div");
  const section = element("details", { class: className }, element("summary", {}, title), body);
  let latest: BatchInputs | null = null;
  let content: Follower | undefined;
  let loading = false;

  section.addEventListener("toggle", () => {
    if (!section.open || content || loading) return;
    loading = true;
    load().then(
      (loaded) => {
        content = loaded;
        body.replaceChildren(loaded.element);
        loaded.follow(latest);
      },
      (error: unknown) => {
        // opened again, it is tried again
        loading = false;
        body.replaceChildren(`It was not loaded: ${error instanceof Error ? error.message : String(error)}`);
      },
    );
  });
  return {
    element: section,
    follow(inputs) {
      latest = inputs;
      content?.follow(inputs);
    },
  };
}
