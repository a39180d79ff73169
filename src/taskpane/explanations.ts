/**
 * The explanations, in a script of their own.
 */
export { explain } from "../explain/explain";
export { callsIn, isOtherResult, referencesIn } from "../explain/formula-calls";
export { readOut } from "../explain/read-out";
