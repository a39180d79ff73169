/**
 * functions.json as Excel reads it: with the address of each function's page, and the same in another language.
 */
import { ENGLISH, type HelpLanguage } from "./languages";
import { pageName } from "./page";

interface Described {
  description: string;
}
interface Metadata {
  functions: (Described & { id: string; helpUrl?: string; parameters: Described[] })[];
}

/** "functions.json", "functions.fr.json". */
export const metadataFile = ({ code }: HelpLanguage) =>
  code === ENGLISH.code ? "functions.json" : `functions.${code}.json`;

/** Only descriptions and addresses differ from language to language; a description without a text is an error. */
export function linked(functionsJson: string, origin: string, language = ENGLISH): string {
  const metadata = JSON.parse(functionsJson) as Metadata;
  const unknown: string[] = [];
  for (const each of metadata.functions) {
    each.helpUrl = `${origin}/help/${language.folder}${pageName(each.id)}`;
    for (const described of [each, ...each.parameters]) {
      if (!language.knows(described.description)) unknown.push(`${each.id}: ${described.description}`);
      described.description = language.say(described.description);
    }
  }
  if (unknown.length > 0) {
    const them = unknown.length === 1 ? "one description" : `${unknown.length} descriptions`;
    throw new Error(
      `${language.name} has no text for ${them} of the functions; add to src/words/${language.code}-functions.ts:\n${unknown.join("\n")}`,
    );
  }
  return JSON.stringify(metadata, null, 2);
}
