import { createHash } from "node:crypto";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { type IncomingHttpHeaders, request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { nodeFileSystem, withinFolder } from "../../src/apps/disk/index.ts";
import { folderStore } from "../../src/apps/folderBook/index.ts";
import { startPageServer } from "../../src/apps/server/index.ts";

const PAGE = `<!doctype html><meta http-equiv="Content-Security-Policy" content="default-src 'none'"><p>page`;

/** A server on a book in a new folder. */
export interface Served {
  readonly folder: string;
  readonly origin: string;
  readonly authority: string;
  readonly token: string;
  readonly bugs: readonly unknown[];
  end(): Promise<void>;
}

export async function serve(page = PAGE): Promise<Served> {
  const home = mkdtempSync(join(tmpdir(), "tallywatt-served-"));
  const folder = join(home, "book");
  const bugs: unknown[] = [];
  const store = folderStore({ folder, fileSystem: withinFolder(nodeFileSystem, folder), onWait: () => {} });
  const server = await startPageServer({
    page,
    store,
    folder,
    port: 0,
    sentenceOf: (error) => (error instanceof Error && "code" in error ? error.message : null),
    onBug: (error) => bugs.push(error),
  });
  const { origin, host, hash } = new URL(server.address);
  const end = async () => {
    await server.stop();
    rmSync(home, { recursive: true, force: true });
  };
  return { folder, origin, authority: host, token: hash.slice(1), bugs, end };
}

/** A digest over every name and byte below a folder. */
export function bytesOf(folder: string): string {
  const hash = createHash("sha256");
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    hash.update(path).update(entry.isFile() ? readFileSync(path) : "");
  }
  return hash.digest("hex");
}

export interface Sent {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Uint8Array;
  /** Sends this many zero bytes as the body, as fast as they are taken. */
  readonly bodyBytes?: number;
}

export interface Got {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
  /** Bytes of the body that were sent before the answer ended it. */
  readonly sentBytes: number;
}

/** Sends exactly these headers and this path, which a browser or `fetch` would put right first. */
export function send(
  { authority }: Served,
  { method = "GET", path, headers = {}, body, bodyBytes }: Sent,
): Promise<Got> {
  const [hostname, port] = authority.split(":");
  return new Promise((resolve, reject) => {
    let sentBytes = 0;
    let got: Got | null = null;
    const asked = request({ hostname, port, method, path, headers: { host: authority, ...headers } });
    asked.on("response", (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () => {
        const { statusCode: status = 0, headers: given } = response;
        got = { status, headers: given, text: Buffer.concat(parts).toString(), sentBytes };
        resolve(got);
      });
    });
    asked.on("error", (error) => (got === null ? reject(error) : undefined));
    if (bodyBytes === undefined) {
      asked.end(body);
      return;
    }
    const part = Buffer.alloc(1 << 16);
    const more = (): void => {
      while (got === null && sentBytes < bodyBytes) {
        sentBytes += part.length;
        if (!asked.write(part)) {
          asked.once("drain", more);
          return;
        }
      }
    };
    more();
  });
}
