/**
 * The functions' plugin gives functions.json to every compilation, those of the HTML pages too; on a rebuild these
 * would differ from the one that carries the help links, which webpack refuses.
 */
import type { Compiler } from "webpack";

export class MainOnly {
  constructor(private readonly asset: string) {}

  apply(compiler: Compiler): void {
    compiler.hooks.compilation.tap("MainOnly", (compilation) => {
      if (compilation.compiler.isChild()) delete compilation.assets[this.asset];
    });
  }
}
