/**
 * What the buttons on the Home tab do beyond opening the pane: each shows it and tells it what is wanted.
 */
export type Command = "new-plan" | "season" | "functions";

/** The pane hears of a command by this event on window; its detail is a Command. */
export const COMMAND_EVENT = "mousse:command";

/** The names in the manifest, and what the pane is told. */
export const commands: Readonly<Record<string, Command>> = {
  newPlan: "new-plan",
  season: "season",
  functionHelp: "functions",
};

async function command(wanted: Command, event: Office.AddinCommands.Event): Promise<void> {
  try {
    await Office.addin.showAsTaskpane();
  } catch {
    // the user opens the pane by hand, and finds there what was asked for
  } finally {
    window.dispatchEvent(new CustomEvent<Command>(COMMAND_EVENT, { detail: wanted }));
    // a command that is not completed keeps its button waiting
    event.completed();
  }
}

/** To be called as soon as office.js is there: Excel may have started the page for a command. */
export function associateCommands(): void {
  for (const [name, wanted] of Object.entries(commands))
    Office.actions.associate(name, (event: Office.AddinCommands.Event) => void command(wanted, event));
}
