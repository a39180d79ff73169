/**
 * Whole numbers from quotients. A quotient that is whole but for the last bits of a float counts as whole:
 * 7.5 hL in 750 mL bottles is 1000 bottles, never 999.
 */
const FLOAT_TAIL = 1e-12;
/** Where the quotient is huge a share of it would be whole pieces, so the tail stops here. */
const LONGEST_TAIL = 1e-6;

const tail = (quotient: number) => Math.min(quotient * FLOAT_TAIL, LONGEST_TAIL);

export const wholeDown = (quotient: number) => Math.floor(quotient + tail(quotient));
export const wholeUp = (quotient: number) => Math.ceil(quotient - tail(quotient));
