import { element } from "./element.ts";

/** How long a browser may take to begin a download, ms. */
const BEGIN_MS = 10_000;

/** Hands a text to the browser as a file to keep. */
export function download(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  element("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), BEGIN_MS);
}
