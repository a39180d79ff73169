/**
 * The columns of the sheet What-if.
 */
export const COLUMN_WIDTHS = [42, 13, 13, 13, 13, 13, 13, 13, 13, 13, 13] as const;
export const LAST_COLUMN = COLUMN_WIDTHS.length - 1;
