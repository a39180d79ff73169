/**
 * Whole numbers from quotients. A quotient that is whole but for the last bits of a float counts as whole:
 * 7.5 hL in 750 mL bottles is 1000 bottles, never 999.
 */
const FLOAT_TAIL = 1e-12;

export const wholeDown = (quotient: number) => Math.floor(quotient * (1 + FLOAT_TAIL));
export const wholeUp = (quotient: number) => Math.ceil(quotient * (1 - FLOAT_TAIL));
