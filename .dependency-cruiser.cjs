/** Which way imports may point. Each rule says why. */
const only = (room, allowed, why) => ({
  name: `${room.replaceAll("/", "-")}-imports`,
  comment: why,
  severity: "error",
  from: { path: `^src/${room}/` },
  to: { path: "^src/", pathNot: `^src/(${[room, ...allowed].join("|")})(/|$)` },
});

module.exports = {
  forbidden: [
    only("cellar", [], "The calculation module knows nothing of sheets, hosts or pages."),
    only("functions", ["cellar"], "A function is an adapter between a cell and the cellar."),
    only("words", [], "A language is data, and what looks a text up in it."),
    only("workbook", ["cellar", "words"], "What is to be written is data; it knows no host."),
    only(
      "hosts/excel",
      ["workbook", "hosts/host.ts", "hosts/reference.ts", "hosts/typed-text.ts"],
      "A host turns workbook data into its own terms; no host knows another.",
    ),
    only(
      "hosts/xlsx",
      ["workbook", "hosts/host.ts", "hosts/reference.ts", "hosts/typed-text.ts"],
      "A host turns workbook data into its own terms; no host knows another.",
    ),
    only(
      "hosts/grid",
      ["workbook", "cellar", "hosts/host.ts", "hosts/reference.ts"],
      "A host turns workbook data into its own terms; no host knows another.",
    ),
    only("explain", ["cellar"], "A working is data, made from the calculation module alone."),
    only("help", ["explain", "words"], "Help is made from doc comments and the workings of their examples."),
    only(
      "taskpane",
      ["cellar", "words", "workbook", "hosts", "explain"],
      "The pane is the outermost room but the workbench.",
    ),
    {
      name: "no-circle",
      severity: "error",
      comment: "A circle has no direction.",
      from: {},
      to: { circular: true, dependencyTypesNot: ["type-only"] },
    },
    {
      name: "cellar-alone",
      severity: "error",
      comment: "No Office, no DOM, no clock, no I/O in the calculation module.",
      from: { path: "^src/cellar/" },
      to: { dependencyTypes: ["core", "npm", "npm-dev"], pathNot: "node_modules/zod" },
    },
    {
      name: "office-only-in-excel",
      severity: "error",
      comment: "Office is behind the Excel host and the pane's entry.",
      from: { pathNot: "^src/(hosts/excel|taskpane)/" },
      to: { path: "office-js" },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    exclude: { path: "\\.css$" },
  },
};
