import { randomBytes } from "node:crypto";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { answer, type Served } from "./answer.ts";
import type { ServedStore } from "./bookRoutes.ts";
import { servedPage } from "./policy.ts";

const LOOPBACK = "127.0.0.1";
const TOKEN_BYTES = 32;
/** A header that has not come by then, or a request that has not ended by then, is given up. */
const [HEADERS_MS, REQUEST_MS, IDLE_MS] = [10_000, 120_000, 60_000];
const MOST_HEADER_BYTES = 8 * 1024;
const MOST_CONNECTIONS = 64;
/** How long a request in work may take once the server is asked to stop. */
const STOP_MS = 5_000;
const SWEEP_MS = 50;

export interface PageServerOptions {
  /** Text of the page as it is kept in one file. */
  readonly page: string;
  readonly store: ServedStore;
  /** The book's folder as the command names it. */
  readonly folder: string;
  /** 0 takes a free one. */
  readonly port: number;
  /** The sentence of an error that the user can do something about; null for a bug of ours. */
  readonly sentenceOf: (error: unknown) => string | null;
  /** Hears every bug of ours. */
  readonly onBug: (error: unknown) => void;
}

export interface PageServer {
  /** Where the page is, the token behind the #. */
  readonly address: string;
  /** Takes no more requests, lets those in work end and resolves when all is closed. */
  stop(): Promise<void>;
}

/** The port that was asked for is in use or not allowed. */
export class PortTakenError extends Error {}

/** Serves the page and one book to this machine alone, under a token that only this start has. */
export async function startPageServer(options: PageServerOptions): Promise<PageServer> {
  const token = randomBytes(TOKEN_BYTES).toString("base64url");
  const limits = { headersTimeout: HEADERS_MS, requestTimeout: REQUEST_MS, keepAliveTimeout: IDLE_MS };
  const server = createServer({ ...limits, maxHeaderSize: MOST_HEADER_BYTES });
  server.maxConnections = MOST_CONNECTIONS;
  const authority = `${LOOPBACK}:${await portOf(server, options.port)}`;
  const served: Served = { ...options, page: servedPage(options.page), token, authority };
  const take = (request: IncomingMessage, response: ServerResponse) => void answer(request, response, served);
  // With checkContinue a body is asked for only once its request was accepted.
  server.on("request", take).on("checkContinue", take);
  return { address: `http://${authority}/#${token}`, stop: () => stop(server) };
}

function portOf(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      const isTaken = error.code === "EADDRINUSE" || error.code === "EACCES";
      reject(isTaken ? new PortTakenError(`port ${port}: ${error.code}`, { cause: error }) : error);
    });
    server.listen(port, LOOPBACK, () => resolve((server.address() as AddressInfo).port));
  });
}

function stop(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const late = setTimeout(() => server.closeAllConnections(), STOP_MS);
    // A connection whose request has ended is idle from then on.
    const sweep = setInterval(() => server.closeIdleConnections(), SWEEP_MS);
    server.close(() => {
      clearTimeout(late);
      clearInterval(sweep);
      resolve();
    });
    server.closeIdleConnections();
  });
}
