/**
 * French. Keys are the English texts of the code.
 */
import type { Catalogue } from "./translate";

export const fr: Catalogue = {};
