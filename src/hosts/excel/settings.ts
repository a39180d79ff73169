/**
 * Small settings that travel with the workbook, under names of our own.
 */
const keyOf = (key: string) => `mousse.${key}`;

export const recall = (key: string): Promise<string | undefined> =>
  Excel.run(async (context) => {
    const setting = context.workbook.settings.getItemOrNullObject(keyOf(key)).load("value");
    await context.sync();
    const value: unknown = setting.isNullObject ? undefined : setting.value;
    return typeof value === "string" ? value : undefined;
  });

export const keep = (key: string, value: string): Promise<void> =>
  Excel.run(async (context) => {
    context.workbook.settings.add(keyOf(key), value);
    await context.sync();
  });
