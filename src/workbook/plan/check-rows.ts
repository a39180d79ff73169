/**
 * What each check compares, and how it comes to its verdict. The limits stand in cells of their own and can be
 * overruled there; regulation changes and the user may know better.
 */
import type { CheckKey } from "../../cellar/batch/checks";
import type { CheckRow } from "./check-rules";
import { finishChecks } from "./finish-checks";
import { inputChecks } from "./inputs-check";
import { tirageChecks } from "./tirage-checks";

export const checkRows: Readonly<Record<CheckKey, CheckRow>> = {
  ...inputChecks,
  ...tirageChecks,
  ...finishChecks,
};
