// Validates the XML on standard input against the schema named as argument; prints the problems as JSON.
// A program of its own because the validator is an ES module that loads itself asynchronously.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { XmlDocument, XmlLibError, XsdValidator, xmlRegisterInputProvider } from "libxml2-wasm";
import { fsInputProviders } from "libxml2-wasm/lib/nodejs.mjs";

xmlRegisterInputProvider(fsInputProviders);

const [schemaPath] = process.argv.slice(2);
const schema = XmlDocument.fromBuffer(readFileSync(schemaPath), { url: pathToFileURL(schemaPath).href });
const validator = XsdValidator.fromDoc(schema);
const problems = [];
try {
  const document = XmlDocument.fromBuffer(readFileSync(0));
  validator.validate(document);
} catch (error) {
  if (!(error instanceof XmlLibError)) throw error;
  problems.push(...error.details.map(({ line, message }) => `line ${line}: ${message.trim()}`));
}
process.stdout.write(JSON.stringify(problems));
