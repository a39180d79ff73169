/**
 * npm run excel as a person starts it, with a certificate that is thrown away: what Excel fetches is there over https.
 */
import { spawn, type ChildProcess } from "node:child_process";
import { get } from "node:https";
import { createServer } from "node:net";
import path from "node:path";

const ROOT = path.resolve(__dirname, "../..");

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done) => server.listen(0, "localhost", done));
  const bound = server.address();
  await new Promise((done) => server.close(done));
  return typeof bound === "object" && bound ? bound.port : 0;
}

function fetched(url: string) {
  return new Promise<{ status: number; anyOrigin: boolean; kind: string; text: string }>((done, fail) => {
    // a connection of its own: one that is kept may just be closed by a busy server
    get(url, { rejectUnauthorized: false, agent: false }, (answer) => {
      let text = "";
      answer.setEncoding("utf8").on("data", (part: string) => (text += part));
      answer.on("end", () =>
        done({
          status: answer.statusCode ?? 0,
          anyOrigin: answer.headers["access-control-allow-origin"] === "*",
          kind: answer.headers["content-type"] ?? "",
          text,
        }),
      );
    }).on("error", fail);
  });
}

describe("npm run excel", () => {
  let running: ChildProcess;
  let origin: string;
  let said = "";

  beforeAll(async () => {
    const port = await freePort();
    origin = `https://localhost:${port}`;
    running = spawn(process.execPath, ["src/commandline/excel.mjs", "--throw-away-certificate"], {
      cwd: ROOT,
      env: { ...process.env, CI: "1", PORT: String(port) },
    });
    await new Promise<void>((done, fail) => {
      const hear = (part: Buffer) => {
        said += part.toString();
        if (said.includes("Leave this window open")) done();
      };
      running.stdout?.on("data", hear);
      running.stderr?.on("data", hear);
      running.on("exit", (code) => fail(new Error(`ended with ${code}: ${said}`)));
    });
  });
  afterAll(() => running.kill());

  test("says where it is and numbers the steps for Windows, Mac and the web", () => {
    expect(said).toContain(`Mousse is served at ${origin}`);
    for (const place of ["Windows", "Mac", "Web"]) expect(said).toMatch(new RegExp(`\n${place}\n  1\\. `));
  });

  test("the manifest is written for this address", async () => {
    const { status, text } = await fetched(`${origin}/manifest.xml`);
    expect(status).toBe(200);
    const addresses = [...text.matchAll(/="(https:[^"]+)"/g)].map((match) => new URL(match[1]!));
    expect(addresses.length).toBeGreaterThan(20);
    expect(new Set(addresses.map((address) => address.origin))).toEqual(new Set([origin]));
    for (const address of addresses) expect((await fetched(address.href)).status).toBe(200);
  });

  test("functions and page are there, as any page of Excel may fetch them", async () => {
    const metadata = await fetched(`${origin}/functions.json`);
    expect(metadata).toMatchObject({ status: 200, anyOrigin: true });
    const { functions } = JSON.parse(metadata.text) as { functions: { helpUrl: string }[] };
    expect(functions.length).toBeGreaterThan(40);
    expect(new URL(functions[0]!.helpUrl).origin).toBe(origin);
    expect((await fetched(functions[0]!.helpUrl)).status).toBe(200);
    const page = await fetched(`${origin}/taskpane.html`);
    expect(page.kind).toContain("text/html");
    expect(page.text).toContain('id="pane"');
    // nothing that reloads pages, or talks to a server on its own, is put into what Excel gets
    const script = await fetched(`${origin}/functions.js`);
    expect(script).toMatchObject({ status: 200, anyOrigin: true });
    expect(script.text).not.toContain("WebSocket");
  });
});
