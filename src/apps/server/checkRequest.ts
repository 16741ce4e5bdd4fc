import { createHash, timingSafeEqual } from "node:crypto";
import type { IncomingMessage } from "node:http";
import { Refusal } from "./refusal.ts";

/**
 * Refuses what did not come from the page itself: a name of this machine that is not its address (a foreign
 * site's name can be made to lead here), and a request that another site's page sends.
 */
export function checkSender({ headers }: IncomingMessage, authority: string): void {
  if (headers.host !== authority) throw new Refusal(421, "this address is not served here");
  const { origin } = headers;
  if (origin !== undefined && origin !== `http://${authority}`) throw new Refusal(403, "foreign origin");
  const site = headers["sec-fetch-site"];
  if (site !== undefined && site !== "same-origin" && site !== "none") {
    throw new Refusal(403, "foreign site");
  }
}

/** Refuses a request for data without this start's token. */
export function checkToken({ headers }: IncomingMessage, token: string): void {
  const given = headers.authorization ?? "";
  if (!timingSafeEqual(digest(given), digest(`Bearer ${token}`)))
    throw new Refusal(401, "token missing or old");
}

/** Refuses a body of another kind. */
export function checkType({ headers }: IncomingMessage, type: string): void {
  const given = (headers["content-type"] ?? "").split(";")[0]?.trim().toLowerCase();
  if (given !== type) throw new Refusal(415, `the body must be ${type}`);
}

function digest(text: string): Uint8Array {
  return createHash("sha256").update(text).digest();
}
