/**
 * The columns of the sheet What-if. The first is as wide as the names of figures in the plan.
 */
export const COLUMN_WIDTHS = [40, 13, 11.2, 11.2, 11.2, 11.2, 11.2, 11.2, 11.2, 11.2, 11.2] as const;
export const LAST_COLUMN = COLUMN_WIDTHS.length - 1;
