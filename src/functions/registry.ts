/**
 * Where there is no Excel, functions are associated here, for whoever runs them: the workbench's grid.
 */
type CustomFunction = (...args: never[]) => unknown;

const page = globalThis as { CustomFunctions?: unknown };

if (page.CustomFunctions === undefined) {
  const associated = new Map<string, CustomFunction>();
  page.CustomFunctions = {
    associated,
    associate: (id: string, calculate: CustomFunction) => associated.set(id, calculate),
  };
}

export {};
