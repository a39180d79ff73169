/**
 * Installs the pinned packages where they are missing or no longer those of package-lock.json. Needs only Node, so
 * that "npm start" and "npm test" work alone in a fresh clone.
 */
import { createHash } from "node:crypto";
import { existsSync, lstatSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";

/** The oldest minor of each line of Node that the packages run on; 24 and later as they are. */
const OLDEST = { 20: 19, 22: 13 };
const NEWEST_LINE = 24;
const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const stamp = path.join(root, "node_modules/.cache/mousse-installed");

const [major, minor] = process.versions.node.split(".").map(Number);
if (major < NEWEST_LINE && !(minor >= OLDEST[major])) {
  console.error(`Node ${process.versions.node} will not do; install Node 20.19, 22.13 or any from 24 on.`);
  process.exit(1);
}
const wanted = createHash("sha256")
  .update(readFileSync(path.join(root, "package-lock.json")))
  .digest("hex");
const installed = existsSync(stamp) ? readFileSync(stamp, "utf8") : "";
const isLink =
  lstatSync(path.join(root, "node_modules"), { throwIfNoEntry: false })?.isSymbolicLink() ?? false;
// an install through a link would empty whatever folder it points to
if (installed !== wanted && !isLink) {
  console.log("Installing the pinned packages …");
  const done = spawnSync("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: root,
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  if (done.status !== 0) {
    console.error("npm ci did not succeed; the messages above say why.");
    process.exit(done.status ?? 1);
  }
  mkdirSync(path.dirname(stamp), { recursive: true });
  writeFileSync(stamp, wanted);
}
