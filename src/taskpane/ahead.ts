/**
 * What the pane loads when it is first asked for is there before, so that a server that has gone is not missed.
 */
export const AHEAD_MS = 1_000;

export function loadAhead(): void {
  setTimeout(() => {
    const ahead = [
      import("./workbook-actions"),
      import("./explanations"),
      import("./function-choice").then(({ listedFunctions }) => listedFunctions()),
      import("./drawings"),
      import("./variants"),
      import("./bench"),
    ];
    Promise.all<unknown>(ahead).catch(() => {
      // asked for again when it is needed, and told then
    });
  }, AHEAD_MS);
}
