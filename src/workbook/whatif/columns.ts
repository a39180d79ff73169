/**
 * The columns of the sheet What-if.
 */
export const COLUMN_WIDTHS = [30, 11, 11, 11, 11, 11, 11, 11, 11, 11, 11] as const;
export const LAST_COLUMN = COLUMN_WIDTHS.length - 1;
