/**
 * npm run guide: the guide's page and its pictures, from the chapters and the workbench as it is built.
 */
import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { launchChromium, serveDist } from "../../tests/support/chromium";
import { chapters } from "./chapters";
import { guidePage } from "./page";
import { sizeOf } from "./png";
import { walk } from "./walk";

const PICTURES = path.join(__dirname, "pictures");
const pictureFile = (name: string) => path.join(PICTURES, `${name}.png`);

async function main(): Promise<void> {
  const server = await serveDist();
  const browser = await launchChromium();
  try {
    const taken = new Map<string, Buffer>();
    for (const chapter of chapters) {
      const { pictures, faults } = await walk(browser, server.address, chapter);
      if (faults.length > 0) throw new Error(`The page is not as the text says.\n${faults.join("\n")}`);
      pictures.forEach((png, name) => taken.set(name, png));
      process.stdout.write(`${chapter.title}: ${pictures.size} pictures\n`);
    }
    mkdirSync(PICTURES, { recursive: true });
    for (const file of readdirSync(PICTURES)) rmSync(path.join(PICTURES, file));
    taken.forEach((png, name) => writeFileSync(pictureFile(name), png));
    writeFileSync(
      path.join(__dirname, "index.html"),
      guidePage(chapters, (name) => sizeOf(readFileSync(pictureFile(name)))),
    );
  } finally {
    await browser.close();
    await server.close();
  }
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
});
