/**
 * The build's step for help: pages beside the pane, and a link to each from functions.json.
 */
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { Compilation, sources, type Compiler } from "webpack";
import { functionDocs } from "./doc-comments";
import { helpPages, pageName } from "./pages";

interface Options {
  /** Folder of the functions' sources. */
  readonly functions: string;
  /** Where the add-in is served: "https://localhost:3000". */
  readonly origin: string;
}

export class HelpPlugin {
  constructor(private readonly options: Options) {}

  apply(compiler: Compiler): void {
    const name = "HelpPlugin";
    compiler.hooks.thisCompilation.tap(name, (compilation) => {
      compilation.hooks.processAssets.tap({ name, stage: Compilation.PROCESS_ASSETS_STAGE_ADDITIONS }, () => {
        const { functions, origin } = this.options;
        const files = readdirSync(functions).map((file) => path.join(functions, file));
        files.forEach((file) => compilation.fileDependencies.add(file));
        const docs = functionDocs(files.map((file) => ({ file, text: readFileSync(file, "utf8") })));
        for (const [file, html] of helpPages(docs))
          compilation.emitAsset(`help/${file}`, new sources.RawSource(html));
        const css = readFileSync(path.join(__dirname, "help.css"), "utf8");
        compilation.emitAsset("help/help.css", new sources.RawSource(css));
        compilation.updateAsset(
          "functions.json",
          (old) => new sources.RawSource(linked(old.source().toString(), origin)),
        );
      });
    });
  }
}

/** functions.json with the address of each function's page. */
export function linked(functionsJson: string, origin: string): string {
  const metadata = JSON.parse(functionsJson) as { functions: { id: string; helpUrl?: string }[] };
  for (const each of metadata.functions) each.helpUrl = `${origin}/help/${pageName(each.id)}`;
  return JSON.stringify(metadata, null, 2);
}
