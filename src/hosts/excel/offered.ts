/**
 * What the running Excel offers. Anything that only decorates or eases is left out where it is not offered.
 */
export type IsSetSupported = (set: string, version: string) => boolean;

export interface Offered {
  readonly sizesAndMerges: boolean;
  readonly names: boolean;
  readonly settings: boolean;
  readonly protection: boolean;
  readonly calculation: boolean;
  readonly frozen: boolean;
  readonly gridlines: boolean;
  readonly validations: boolean;
  readonly highlights: boolean;
  readonly charts: boolean;
  readonly tables: boolean;
  readonly notes: boolean;
  readonly copies: boolean;
  readonly indents: boolean;
  /** Several separate ranges as one object. */
  readonly areas: boolean;
  readonly screenUpdating: boolean;
  readonly printing: boolean;
  readonly undoGroups: boolean;
}

/** Asked through a function, so that Office is touched only once the host is used. */
export const askOffice: IsSetSupported = (set, version) =>
  Office.context.requirements.isSetSupported(set, version);

export function offeredBy(isSetSupported: IsSetSupported): Offered {
  const from = (version: string) => isSetSupported("ExcelApi", version);
  return {
    sizesAndMerges: from("1.2"),
    names: from("1.4"),
    settings: from("1.4"),
    protection: from("1.2"),
    calculation: from("1.6"),
    frozen: from("1.7"),
    gridlines: from("1.8"),
    validations: from("1.8"),
    // on several ranges at once from 1.9
    highlights: from("1.9"),
    // series of their own from 1.7; formats of axes, and where these cross, from 1.8
    charts: from("1.8"),
    // without stripes from 1.3
    tables: from("1.3"),
    // an Office.js may be older than the Excel that it runs in
    notes: from("1.18") && "notes" in Excel.Worksheet.prototype,
    copies: from("1.7"),
    indents: from("1.9"),
    areas: from("1.9"),
    screenUpdating: from("1.9"),
    printing: from("1.9"),
    undoGroups: from("1.20"),
  };
}
