/**
 * The columns of the sheet What-if.
 */
export const COLUMN_WIDTHS = [30, 10, 10.4, 10.4, 10.4, 10.4, 10.4, 10.4, 10.4, 10.4, 10.4] as const;
export const LAST_COLUMN = COLUMN_WIDTHS.length - 1;
