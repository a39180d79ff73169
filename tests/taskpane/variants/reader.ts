/**
 * Numbers as this machine's reader writes them, so that the tests hold in every locale.
 */

/** A text with its numbers, "1,250.5", in the reader's notation; years and ids are best kept out of it. */
export const asRead = (text: string): string =>
  text.replace(/\d[\d,]*(\.\d+)?/gu, (number) => {
    const decimals = number.split(".")[1]?.length ?? 0;
    return Number(number.replaceAll(",", "")).toLocaleString(undefined, {
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
    });
  });
