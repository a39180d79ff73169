/**
 * A chapter of the guide as data: what it says, what is done for it in the running workbench, what is pictured.
 *
 * In texts, **…** is the exact name of a control, a heading, a cell or a sheet, `…` what is typed or what the page
 * says then, and […](…) a link. Each is looked for on the page before and after the step.
 */
import type { Bench } from "./bench";
import type { Clip } from "./clip";

export interface Picture {
  /** Of its file, without .png. */
  readonly name: string;
  /** For who does not see it. */
  readonly alt: string;
  readonly of: (bench: Bench) => Promise<Clip>;
}

export interface Step {
  readonly text: string;
  readonly does?: (bench: Bench) => Promise<void>;
  readonly picture?: Picture;
}

/** A figure of the model beside a published one, and the test that holds them together. */
export interface Comparison {
  readonly what: string;
  readonly against: string;
  readonly apart: string;
  /** A file of tests/published, and words of the test in it. */
  readonly test: readonly [file: string, title: string];
}

export interface Chapter {
  /** Its address on the page. */
  readonly key: string;
  readonly title: string;
  readonly about: string;
  readonly steps: readonly Step[];
  readonly comparisons?: readonly Comparison[];
  /** What ends the chapter: headed lists. */
  readonly lists?: readonly { readonly heading: string; readonly items: readonly string[] }[];
}
