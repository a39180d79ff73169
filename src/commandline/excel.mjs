/**
 * npm run excel: builds the add-in for https on this machine, serves it there, and says how to get it into Excel.
 */
import { createRequire } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";
import webpack from "webpack";
import DevServer from "webpack-dev-server";
import { sideloading } from "./sideloading.mjs";

const PREFERRED_PORT = 3000;
const port = Number(process.env.PORT ?? PREFERRED_PORT);
const origin = `https://localhost:${port}`;
/** The project's own manifest is written for the preferred port. */
const manifest =
  port === PREFERRED_PORT
    ? path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../../manifest.xml")
    : `${origin}/manifest.xml, saved from a browser`;

const NOT_TRUSTED = `
Excel loads an add-in only from an address whose certificate this machine trusts. What helps:

  1. Run npm run excel again and say yes when you are asked to install "Developer CA for Microsoft Office Add-ins".
  2. Without that question, trust the file .office-addin-dev-certs/ca.crt in your home folder by hand. Windows: open
     it, Install Certificate, Current User, Trusted Root Certification Authorities. Mac: open it in Keychain Access,
     then Trust, Always Trust. Linux: npx office-addin-dev-certs install, which asks for sudo.
     Then run npm run excel again.
  3. Without the right to do so, ask whoever looks after this machine, or have the add-in hosted: src/docs/it.md.
`;

/** Made on this machine and trusted on it alone; for tests one that nobody trusts, made by the server itself. */
async function certificate() {
  if (process.argv.includes("--throw-away-certificate")) return undefined;
  try {
    const { default: certificates } = await import("office-addin-dev-certs");
    return await certificates.getHttpsServerOptions();
  } catch (error) {
    console.error(`The certificate of ${origin} is not trusted yet. ${error.message}\n${NOT_TRUSTED}`);
    process.exit(1);
  }
}

const options = await certificate();
const configure = createRequire(import.meta.url)("../../webpack.config.js");
const configuration = configure({ origin }, { mode: "production" });
const server = new DevServer(
  {
    ...configuration.devServer,
    server: { type: "https", options },
    host: "localhost",
    port,
    // Excel on the web fetches the functions' description from a page of its own
    headers: { "Access-Control-Allow-Origin": "*", "Cache-Control": "no-cache" },
    // Excel gets what is built, without the scripts that reload a page
    client: false,
    liveReload: false,
    webSocketServer: false,
    setupExitSignals: true,
  },
  webpack(configuration),
);

console.log("Building the add-in …");
try {
  await server.start();
} catch (error) {
  const taken = error.code === "EADDRINUSE";
  console.error(
    taken ? `Port ${port} is taken: end what runs there, or set PORT to another number.` : error.message,
  );
  process.exit(1);
}
server.middleware.waitUntilValid(() => console.log(sideloading(origin, manifest)));
