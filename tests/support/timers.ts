/**
 * Timers of a page that a test does without.
 */
import type { Page } from "playwright-core";

/** From the page's next load on, timers of these delays never run; `to_ms` null is any longer one. */
export const holdBackTimers = (page: Page, from_ms: number, to_ms: number | null): Promise<unknown> =>
  page.addInitScript(
    ([from, to]) => {
      const real = window.setTimeout.bind(window);
      window.setTimeout = ((run: TimerHandler, ms = 0, ...given: unknown[]) =>
        ms >= from && ms <= (to ?? ms) ? 0 : real(run, ms, ...given)) as typeof window.setTimeout;
    },
    [from_ms, to_ms] as const,
  );
