/** The certificate for Excel on one's own machine. The build's scripts run in Node as they are. */
import { execFile } from "node:child_process";
import { X509Certificate } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { createServer, request } from "node:https";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";

const root = path.join(__dirname, "../..");
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), "cribsheet-test-"));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

type Made = {
  readonly key: string;
  readonly cert: string;
  readonly thumbprint: string;
  readonly isNew: boolean;
};

async function run<Value>(script: string): Promise<Value> {
  const given = ["--input-type=module", "--eval", script];
  const { stdout } = await promisify(execFile)(process.execPath, given, { cwd: root });
  return JSON.parse(stdout) as Value;
}

const certificateAt = (now: string): Promise<Made> =>
  run(`
    const { localCertificate } = await import("./build/certificate.js");
    const made = await localCertificate(${JSON.stringify(folder)}, new Date("${now}"));
    process.stdout.write(JSON.stringify(made));`);

test("is made once, kept while it is good, and made anew before it ends", async () => {
  const first = await certificateAt("2026-03-01");
  const second = await certificateAt("2026-12-31");
  const third = await certificateAt("2027-02-27");
  expect([first.isNew, second.isNew, third.isNew]).toEqual([true, false, true]);
  expect(second.thumbprint).toBe(first.thumbprint);
  expect(third.thumbprint).not.toBe(first.thumbprint);
});

test("vouches for this machine only, signs nothing, and its key is the owner's to read", async () => {
  const { key, cert, thumbprint } = await certificateAt(new Date().toISOString());
  const certificate = new X509Certificate(readFileSync(cert));
  expect(certificate.checkHost("localhost")).toBe("localhost");
  expect(certificate.checkHost("example.com")).toBeUndefined();
  expect(certificate.ca).toBe(false);
  expect(thumbprint).toMatch(/^[0-9A-F]{40}$/);
  if (process.platform !== "win32") expect(statSync(key).mode & 0o077).toBe(0);
});

test("is taken by a client that trusts it, for https on localhost", async () => {
  const { key, cert } = await certificateAt(new Date().toISOString());
  const server = createServer({ key: readFileSync(key), cert: readFileSync(cert) }, (_, answer) =>
    answer.end("here"),
  );
  await new Promise<void>((resolve) => server.listen(0, "localhost", resolve));
  const { port } = server.address() as AddressInfo;
  try {
    const status = await new Promise((resolve, reject) => {
      request({ host: "localhost", port, ca: readFileSync(cert) }, (answer) => {
        answer.resume();
        resolve(answer.statusCode);
      })
        .on("error", reject)
        .end();
    });
    expect(status).toBe(200);
  } finally {
    server.close();
  }
});

describe("the steps", () => {
  const steps = (platform: string): Promise<string> =>
    run(`
      const { addingSteps } = await import("./build/excelSteps.js");
      process.stdout.write(JSON.stringify(addingSteps({
        manifest: "/here/manifest.xml", address: "https://localhost:3000", platform: "${platform}",
        cert: "/here/localhost.crt", thumbprint: "AB12", validTo: new Date("2027-01-02"), isNew: true,
      })));`);

  test.each([
    ["win32", "Import-Certificate"],
    ["darwin", "security add-trusted-cert"],
    ["linux", "certutil"],
    ["freebsd", "certutil"],
  ])("on %s say how to trust it there, and how to add the manifest everywhere", async (at, how) => {
    const text = await steps(at);
    expect(text).toContain(how);
    for (const place of ["Windows", "Mac", "Excel on the web", "/here/manifest.xml"]) {
      expect(text).toContain(place);
    }
    expect(text).not.toMatch(/undefined|\[object/);
  });
});
