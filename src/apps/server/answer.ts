import type { IncomingMessage, ServerResponse } from "node:http";
import { BOOK, type FaultMessage } from "./bookMessages.ts";
import { bookReply, type ServedBook } from "./bookRoutes.ts";
import { checkSender, checkToken } from "./checkRequest.ts";
import { DATA_POLICY, HEADERS, type ServedPage } from "./policy.ts";
import { Refusal } from "./refusal.ts";

/** What requests are answered from. */
export interface Served extends ServedBook {
  readonly page: ServedPage;
  readonly token: string;
  /** The one Host that is answered, "127.0.0.1:8123". */
  readonly authority: string;
  readonly sentenceOf: (error: unknown) => string | null;
  readonly onBug: (error: unknown) => void;
}

/** A body that nobody reads is cut off this long after its refusal was sent. */
const CUT_MS = 200;

/** Answers one request; never rejects. */
export async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  served: Served,
): Promise<void> {
  response.on("error", () => {});
  request.on("error", () => {});
  try {
    checkSender(request, served.authority);
    if (request.url === "/") return sendPage(request, response, served.page);
    const isBook = new RegExp(`^${BOOK}(?:[/?]|$)`).test(request.url ?? "");
    if (!isBook) throw new Refusal(404, "there is nothing here");
    checkToken(request, served.token);
    const { status, body } = await bookReply(request, response, served);
    if (body === null || body instanceof Uint8Array) {
      send(response, status, "application/octet-stream", body ?? new Uint8Array());
    } else sendJson(response, status, body);
  } catch (error) {
    refuse(request, response, error, served);
  }
}

function sendPage({ method }: IncomingMessage, response: ServerResponse, page: ServedPage): void {
  if (method !== "GET") throw new Refusal(405, "the page is read", "GET");
  response.setHeader("content-security-policy", page.policy);
  send(response, 200, "text/html; charset=utf-8", new TextEncoder().encode(page.text));
}

function refuse(
  request: IncomingMessage,
  response: ServerResponse,
  error: unknown,
  { sentenceOf, onBug }: Served,
): void {
  if (response.headersSent || response.destroyed) return;
  cutUnread(request, response);
  if (error instanceof Refusal) {
    if (error.allow !== null) response.setHeader("allow", error.allow);
    sendJson(response, error.status, { fault: error.message } satisfies FaultMessage);
    return;
  }
  const sentence = sentenceOf(error);
  if (sentence === null) onBug(error);
  const status = sentence === null ? 500 : 422;
  sendJson(response, status, { fault: sentence ?? "a fault of tallywatt's own" } satisfies FaultMessage);
}

/** The rest of a refused body is not read: the connection ends instead. */
function cutUnread(request: IncomingMessage, response: ServerResponse): void {
  if (request.complete) return;
  response.setHeader("connection", "close");
  response.once("finish", () => setTimeout(() => request.socket.destroy(), CUT_MS));
}

function sendJson(response: ServerResponse, status: number, body: object): void {
  send(response, status, "application/json", new TextEncoder().encode(JSON.stringify(body)));
}

function send(response: ServerResponse, status: number, type: string, body: Uint8Array): void {
  for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
  if (!response.hasHeader("content-security-policy")) {
    response.setHeader("content-security-policy", DATA_POLICY);
  }
  if (status !== 204) {
    response.setHeader("content-type", type);
    response.setHeader("content-length", body.length);
  }
  response.writeHead(status).end(body);
}
