/**
 * Installs the pinned packages where they are missing or no longer those of package-lock.json. Needs only Node, so
 * that "npm start" and "npm test" work alone in a fresh clone.
 */
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";

const OLDEST_NODE = 20;
const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const stamp = path.join(root, "node_modules/.cache/mousse-installed");

if (Number(process.versions.node.split(".")[0]) < OLDEST_NODE) {
  console.error(`Node ${process.versions.node} is too old; install Node ${OLDEST_NODE} or newer.`);
  process.exit(1);
}
const wanted = createHash("sha256")
  .update(readFileSync(path.join(root, "package-lock.json")))
  .digest("hex");
const installed = existsSync(stamp) ? readFileSync(stamp, "utf8") : "";
if (installed !== wanted) {
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
