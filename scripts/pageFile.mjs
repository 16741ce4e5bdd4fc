// Bundles the page into one HTML file that asks for nothing: node scripts/build.mjs writes it to dist/page.html.
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { build, transform } from "esbuild";

const root = resolve(import.meta.dirname, "..");
const digest = (text) => `'sha256-${createHash("sha256").update(text, "utf8").digest("base64")}'`;

/** The page carries the reports' styles itself: the core that writes the reports need not hold them too. */
const withoutStyles = {
  name: "without-styles",
  setup({ onLoad }) {
    onLoad({ filter: /report[\\/]assets[\\/]generated\.ts$/ }, async ({ path }) => {
      const text = await readFile(path, "utf8");
      const contents = text.replace(/^(export const (?:REPORT|SEASON)_STYLE =)[^\n]*$/gm, '$1 "";');
      return { contents, loader: "ts" };
    });
  },
};

async function scriptText(entry, { define = {}, format = "iife", plugins = [] } = {}) {
  const result = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    bundle: true,
    minify: true,
    write: false,
    format,
    target: "es2022",
    charset: "ascii",
    legalComments: "none",
    external: ["stream"],
    mainFields: ["module", "main"],
    define,
    plugins,
  });
  return result.outputFiles[0].text.trim();
}

/** The page as one text. */
export async function pageText() {
  const { version } = JSON.parse(await readFile(resolve(root, "package.json"), "utf8"));
  const assets = await scriptText("src/show/report/assets/generated.ts", { format: "esm" });
  const { REPORT_STYLE, REPORT_SCRIPT } = await import(`data:text/javascript,${encodeURIComponent(assets)}`);
  const own = await readFile(resolve(root, "src/apps/page/page.css"), "utf8");
  const style = REPORT_STYLE + (await transform(own, { loader: "css", minify: true })).code.trim();
  const core = await scriptText("src/apps/page/core/main.ts", {
    define: { TALLYWATT_RELEASE: JSON.stringify(version) },
    plugins: [withoutStyles],
  });
  const client = await scriptText("src/apps/page/client/main.ts");
  if (/<!--/.test(core + client)) throw new Error("a script of the page holds <!--");
  const scripts = [client, core, REPORT_SCRIPT].map(digest).join(" ");
  const policy = `default-src 'none'; script-src ${scripts}; style-src ${digest(style)}; worker-src blob:; img-src data:; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="en"><head><meta http-equiv="Content-Security-Policy" content="${policy}"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark"><title>tallywatt: drop a log, read the answer</title><style>${style}</style></head>
<body><main><section class="desk" aria-label="Logs and aircraft"><h1>Drop a log, read the answer</h1>
<div class="drop"><p>Drop CSV logs anywhere on this page, or choose them.</p><div class="buttons"><button type="button" id="choose-logs">Choose logs</button><button type="button" id="choose-aircraft">Take in an aircraft file</button><button type="button" id="export-aircraft" hidden>Save the aircraft file</button></div></div>
<input type="file" id="logs-input" multiple hidden><input type="file" id="aircraft-input" hidden>
<p id="aircraft">No aircraft file yet: nothing is known of its plan and limits.</p>
<p class="quiet">Nothing leaves this page, and nothing is kept: closing it forgets logs, aircraft and answers. Your files stay where they are.</p>
<p id="slow" hidden>This browser starts no worker, so the page pauses while it reads a log.</p>
<p id="status" role="status">Starting.</p><ol id="logs"></ol></section>
<div id="question"></div><article id="report" aria-label="Report"></article></main>
<script id="core" type="text/plain">${core}</script><script>${client}</script></body></html>
`;
}
