import { html, type Markup, NOTHING, trusted } from "../charts/index.ts";
import { REPORT_SCRIPT, REPORT_STYLE, SCRIPT_HASH, STYLE_HASH } from "./assets/generated.ts";

/** A style of our own that one kind of page has beside the shared one, with its digest. */
export interface PageStyle {
  readonly text: string;
  readonly hash: string;
}

function policyText(more: PageStyle | null): string {
  const styles = [STYLE_HASH, ...(more === null ? [] : [more.hash])].map((hash) => `'${hash}'`);
  return [
    "default-src 'none'",
    `script-src '${SCRIPT_HASH}'`,
    `style-src ${styles.join(" ")}`,
    "img-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}

/** A whole page around a body. The policy comes first, so that nothing before it can ask for anything. */
export function documentText(title: string, body: Markup, more: PageStyle | null = null): string {
  const policy = trusted(policyText(more));
  const moreStyle = more === null ? NOTHING : html`<style>${trusted(more.text)}</style>`;
  return html`<!doctype html>
<html lang="en"><head><meta http-equiv="Content-Security-Policy" content="${policy}"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark"><title>${title}</title><style>${trusted(REPORT_STYLE)}</style>${moreStyle}</head>
<body>${body}<script>${trusted(REPORT_SCRIPT)}</script></body></html>
`.text;
}
