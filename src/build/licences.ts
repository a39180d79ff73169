/**
 * The build's step for licences: licences.txt, with every package of which a part ships, its version, its licence and
 * the licence's text. A package whose licence is not among the permissive ones stops the build.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { Compilation, sources, type Compiler, type Module } from "webpack";
import { licensed, packageFolder, type Licensed } from "./licences-package";

/** They leave a few lines of their own in each script: what loads the chunks and their styles. */
const IN_EVERY_SCRIPT = ["webpack", "mini-css-extract-plugin"];

export class Licences {
  apply(compiler: Compiler): void {
    const name = "Licences";
    const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
    compiler.hooks.thisCompilation.tap(name, (compilation) => {
      compilation.hooks.processAssets.tap({ name, stage }, () => {
        const root = compiler.context;
        const folders = new Set(IN_EVERY_SCRIPT.map((each) => path.join(root, "node_modules", each)));
        for (const module of compilation.modules) {
          // what no chunk holds was only looked at
          if (compilation.chunkGraph.getNumberOfModuleChunks(module) === 0) continue;
          for (const folder of foldersOf(module)) folders.add(folder);
        }
        const own = readFileSync(path.join(root, "LICENSE"), "utf8").trim();
        const text = licenceText(own, [...folders].map(licensed));
        compilation.emitAsset("licences.txt", new sources.RawSource(text));
      });
    });
  }
}

/** A module that was put together from several has them all. */
function foldersOf(module: Module): string[] {
  const parts = "modules" in module ? (module.modules as Module[]) : [module];
  return parts.flatMap((part) => packageFolder(part.nameForCondition() ?? "") ?? []);
}

const RULE = `\n\n${"-".repeat(80)}\n\n`;

/** Packages under the very same text stand above it together. */
export function licenceText(own: string, packages: readonly Licensed[]): string {
  const inOrder = [...packages].sort((one, other) => (nameOf(one) < nameOf(other) ? -1 : 1));
  const byText = new Map<string, Licensed[]>();
  for (const each of inOrder) {
    const words = each.text.replace(/\s+/gu, " ");
    byText.set(words, [...(byText.get(words) ?? []), each]);
  }
  const groups = [...byText.values()].map((group) => `${group.map(lineOf).join("\n")}\n\n${group[0]!.text}`);
  const head = `Mousse\n\n${own}${RULE}Parts of these packages are in the files of Mousse, each under its own licence.`;
  return `${[head, ...groups].join(RULE)}\n`;
}

const nameOf = ({ name, version }: Licensed) => `${name} ${version}`;
const lineOf = (each: Licensed) => `${nameOf(each)}, ${each.id}`;
