/**
 * npm start: builds and serves the workbench on this machine only, rebuilds on change, opens the browser.
 */
import { spawn } from "node:child_process";
import { createRequire } from "node:module";
import webpack from "webpack";
import DevServer from "webpack-dev-server";

const PREFERRED_PORT = 3000;

/** The browser the user has set, if this machine has one to open; the printed address always works. */
function openBrowser(address) {
  if (process.env.CI || process.argv.includes("--no-open")) return;
  const [command, args] =
    process.platform === "darwin"
      ? ["open", [address]]
      : process.platform === "win32"
        ? ["cmd", ["/c", "start", "", address]]
        : ["xdg-open", [address]];
  spawn(command, args, { stdio: "ignore", detached: true })
    .on("error", () => undefined)
    .unref();
}

const configure = createRequire(import.meta.url)("../../webpack.config.js");
const configuration = configure({}, { mode: "production" });
const port = await DevServer.getFreePort(process.env.PORT ?? PREFERRED_PORT, "localhost");
const server = new DevServer(
  { ...configuration.devServer, host: "localhost", port, setupExitSignals: true },
  webpack(configuration),
);

console.log("Building the workbench …");
await server.start();
server.middleware.waitUntilValid(() => {
  const address = `http://localhost:${port}/workbench.html`;
  console.log(`\nThe workbench is open at ${address}\nStop it with Ctrl+C.\n`);
  openBrowser(address);
});
