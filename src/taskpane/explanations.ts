/**
 * The explanations, in a script of their own.
 */
export { explain } from "../explain/explain";
export { readOut } from "../explain/read-out";
