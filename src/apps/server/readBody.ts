import type { IncomingMessage, ServerResponse } from "node:http";
import { Refusal } from "./refusal.ts";

/**
 * The whole body of a request. Its length must be told before it is sent: then one that is too large is refused
 * before a byte of it is read, and the connection takes no more than was told.
 */
export async function readBody(
  request: IncomingMessage,
  response: ServerResponse,
  mostBytes: number,
): Promise<Uint8Array> {
  const told = request.headers["content-length"];
  if (told === undefined || !/^\d{1,12}$/.test(told)) throw new Refusal(411, "say how long the body is");
  if (Number(told) > mostBytes) throw new Refusal(413, `more than ${mostBytes} bytes are not taken`);
  if (request.headers.expect !== undefined) response.writeContinue();
  const parts: Uint8Array[] = [];
  for await (const part of request) parts.push(part as Uint8Array);
  const body = Buffer.concat(parts);
  if (body.length !== Number(told)) throw new Refusal(400, "the body ended early");
  return body;
}
