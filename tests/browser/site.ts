/** Serves the built pages to the test browser, from this machine to this machine. */
import { readFile } from "node:fs/promises";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import path from "node:path";

export type Site = {
  /** Such as `http://127.0.0.1:40123`. */
  readonly origin: string;
  /** Answers a page's POST to `address` with what `answer` makes of its body. */
  readonly answer: (address: string, answer: (body: string) => string) => void;
  readonly close: () => Promise<void>;
};

const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".xml": "application/xml",
  ".wasm": "application/wasm",
  ".txt": "text/plain; charset=utf-8",
};

/** Serves `folder` on a free port. */
export async function openSite(folder: string): Promise<Site> {
  const answers = new Map<string, (body: string) => string>();
  const respond = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const { pathname } = new URL(request.url ?? "/", "http://site");
    if (request.method === "POST") {
      const answer = answers.get(pathname);
      response.writeHead(answer === undefined ? 404 : 200, { "Content-Type": "text/plain" });
      response.end(answer?.(await bodyOf(request)) ?? "");
      return;
    }
    const file = path.join(folder, pathname === "/" ? "index.html" : pathname);
    const content = await contentOf(folder, file);
    if (content === null) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, {
      "Content-Type": types[path.extname(file)] ?? "application/octet-stream",
      "Cache-Control": "no-store",
      ...policyHeader(file, content),
    });
    response.end(content);
  };
  const server = createServer((request, response) => {
    respond(request, response).catch(() => response.destroy());
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("The site has no port.");
  return {
    origin: `http://127.0.0.1:${address.port}`,
    answer: (place, answer) => void answers.set(place, answer),
    close: () =>
      new Promise((closed) => {
        server.closeAllConnections();
        server.close(() => closed());
      }),
  };
}

async function contentOf(folder: string, file: string): Promise<Buffer | null> {
  if (!file.startsWith(folder + path.sep)) return null;
  try {
    return await readFile(file);
  } catch {
    return null;
  }
}

/** The page's own policy as a header too, with what only a header can say. */
function policyHeader(file: string, content: Buffer): Record<string, string> {
  if (!file.endsWith(".html")) return {};
  const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/i.exec(
    content.toString("utf8"),
  )?.[1];
  if (policy === undefined) throw new Error(`${path.basename(file)} has no content policy.`);
  return { "Content-Security-Policy": `${policy}; frame-ancestors 'none'` };
}

async function bodyOf(request: IncomingMessage): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of request) parts.push(part as Buffer);
  return Buffer.concat(parts).toString("utf8");
}
