/**
 * The build's step for help, in every language: pages beside the pane, and a functions.json that links to each.
 */
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { Compilation, sources, type Compiler } from "webpack";
import { functionDocs } from "./doc-comments";
import { helpLanguages } from "./languages";
import { linked, metadataFile } from "./metadata";
import { helpPages } from "./pages";

export { linked };

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
    const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
    compiler.hooks.thisCompilation.tap(name, (compilation) => {
      compilation.hooks.processAssets.tap({ name, stage }, () => {
        const { functions, origin } = this.options;
        const files = readdirSync(functions).map((file) => path.join(functions, file));
        files.forEach((file) => compilation.fileDependencies.add(file));
        const docs = functionDocs(files.map((file) => ({ file, text: readFileSync(file, "utf8") })));
        const emit = (file: string, text: string) => compilation.emitAsset(file, new sources.RawSource(text));
        emit("help/help.css", readFileSync(path.join(__dirname, "help.css"), "utf8"));

        const [english, ...others] = helpLanguages();
        const generated = compilation.getAsset("functions.json")!.source.source().toString();
        const metadata = (language = english) => linked(generated, origin, language);
        for (const language of others) emit(metadataFile(language), metadata(language));
        compilation.updateAsset("functions.json", new sources.RawSource(metadata()));
        for (const language of [english, ...others])
          for (const [file, html] of helpPages(docs, language, [english, ...others]))
            emit(`help/${file}`, html);
      });
    });
  }
}
