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
  const { REPORT_STYLE, SEASON_STYLE, REPORT_SCRIPT } = await import(
    `data:text/javascript,${encodeURIComponent(assets)}`
  );
  const own = await readFile(resolve(root, "src/apps/page/page.css"), "utf8");
  const style =
    REPORT_STYLE + SEASON_STYLE + (await transform(own, { loader: "css", minify: true })).code.trim();
  const core = await scriptText("src/apps/page/core/main.ts", {
    define: { TALLYWATT_RELEASE: JSON.stringify(version) },
    plugins: [withoutStyles],
  });
  const client = await scriptText("src/apps/page/client/main.ts");
  if (/<!--/.test(core + client)) throw new Error("a script of the page holds <!--");
  const scripts = [client, core, REPORT_SCRIPT].map(digest).join(" ");
  const policy = `default-src 'none'; script-src ${scripts}; style-src ${digest(style)}; worker-src blob:; img-src data:; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="en"><head><meta http-equiv="Content-Security-Policy" content="${policy}"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark"><link rel="icon" href="data:,"><title>tallywatt: drop a log, read the answer</title><style>${style}</style></head>
<body><header class="top"><p class="own-name">tallywatt</p><nav aria-label="Places"><button type="button" id="go-log" aria-current="page">Log</button><button type="button" id="go-aircraft">Aircraft</button><button type="button" id="go-logbook">Logbook</button><button type="button" id="go-swap">What if</button></nav></header>
<p id="status" role="status">Starting.</p>
<main>
<section id="log" class="place" aria-labelledby="log-title"><div class="desk"><h1 id="log-title" tabindex="-1">Drop a log, read the answer</h1>
<div class="drop"><p>Drop CSV logs or a folder of them anywhere on this page, or choose them.</p><div class="buttons"><button type="button" id="choose-logs">Choose logs</button><button type="button" id="choose-folder">Choose a folder</button></div></div>
<input type="file" id="logs-input" multiple hidden><input type="file" id="folder-input" webkitdirectory hidden>
<p id="held"></p>
<p class="quiet">Nothing leaves this page. Your files stay where they are. <span id="kept"></span></p>
<p id="slow" hidden>This browser starts no worker, so the page pauses while it reads a log.</p>
<ol id="logs"></ol></div>
<div id="question"></div><div id="keep"></div><div id="report-units"></div><article id="report" aria-label="Report" tabindex="-1"></article></section>
<section id="aircraft" class="place" aria-labelledby="aircraft-title" hidden><h1 id="aircraft-title" tabindex="-1">The aircraft and its plan</h1>
<div class="buttons"><button type="button" id="choose-aircraft">Take in an aircraft file</button><button type="button" id="new-aircraft">Start from an example</button><button type="button" id="save-aircraft" hidden>Save as a file</button><button type="button" id="keep-aircraft" hidden>Keep in the logbook</button></div>
<input type="file" id="aircraft-input" hidden><div id="aircraft-kept"></div><div id="aircraft-refused"></div>
<p id="units-choice"><label for="units">Units shown</label> <select id="units"><option value="metric">°C, kg, m</option><option value="imperial">°F, lb, ft</option></select></p>
<div class="beside"><div id="aircraft-form"></div><div class="meant" id="plan" role="group" aria-label="What it means" tabindex="0"></div></div><p class="now" id="plan-now" role="status"></p></section>
<section id="logbook" class="place" aria-labelledby="logbook-title" hidden><h1 id="logbook-title" tabindex="-1">The logbook</h1>
<p class="quiet" id="book-place"></p>
<details><summary>Save, take in, undo</summary><div class="buttons"><button type="button" id="export-book">Save the whole logbook as a file</button><button type="button" id="import-book">Take in a logbook file</button><button type="button" id="undo-book">Undo the last change</button></div></details>
<input type="file" id="book-input" hidden><div id="book-choices"></div><div id="book-view"></div><article id="book-report" aria-label="Report"></article></section>
<section id="swap" class="place" aria-labelledby="swap-title" hidden><h1 id="swap-title" tabindex="-1">What if something else were fitted</h1>
<p>Step or type another propeller, pack or day. Nothing of the aircraft file changes.</p>
<div class="beside"><div id="swap-fields"></div><div class="meant" id="swap-view" role="group" aria-label="The answer" tabindex="0"></div></div><p class="now" id="swap-now" role="status"></p></section>
</main>
<script id="core" type="text/plain">${core}</script><script>${client}</script></body></html>
`;
}
