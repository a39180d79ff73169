/**
 * What is there before anything is written.
 */
export interface Look {
  readonly sheetNames: readonly string[];
  readonly calculatesByHand: boolean;
}

export async function look(context: Excel.RequestContext): Promise<Look> {
  const worksheets = context.workbook.worksheets.load("items/name");
  const application = context.application.load("calculationMode");
  await context.sync();
  return {
    sheetNames: worksheets.items.map((sheet) => sheet.name),
    calculatesByHand: application.calculationMode === "Manual",
  };
}
