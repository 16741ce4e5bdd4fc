import { html, type Markup, trusted } from "../charts/index.ts";
import { REPORT_SCRIPT, REPORT_STYLE, SCRIPT_HASH, STYLE_HASH } from "./assets/generated.ts";

const POLICY = [
  "default-src 'none'",
  `script-src '${SCRIPT_HASH}'`,
  `style-src '${STYLE_HASH}'`,
  "img-src data:",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** A whole page around a body. The policy comes first, so that nothing before it can ask for anything. */
export function documentText(title: string, body: Markup): string {
  const policy = trusted(POLICY);
  return html`<!doctype html>
<html lang="en"><head><meta http-equiv="Content-Security-Policy" content="${policy}"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark"><title>${title}</title><style>${trusted(REPORT_STYLE)}</style></head>
<body>${body}<script>${trusted(REPORT_SCRIPT)}</script></body></html>
`.text;
}
