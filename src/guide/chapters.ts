/**
 * The chapters of the guide, in the order in which they are read.
 */
import type { Chapter } from "./chapter";
import { behindTheNumbers } from "./chapters/behind-the-numbers";
import { bookkeeper } from "./chapters/bookkeeper";
import { firstPlan } from "./chapters/first-plan";
import { limits } from "./chapters/limits";
import { refusals } from "./chapters/refusals";
import { season } from "./chapters/season";
import { whatIf } from "./chapters/what-if";

export const chapters: readonly Chapter[] = [
  firstPlan,
  bookkeeper,
  refusals,
  behindTheNumbers,
  whatIf,
  season,
  limits,
];
