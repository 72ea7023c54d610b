/**
 * `npm run excel`: serves the add-in to an Excel on this machine, and tells step by step how to add it.
 *
 *   npm run excel                  makes a certificate if there is none, tells the steps, serves
 *   npm run excel -- --only-tell   … without serving
 */
import { spawn } from "node:child_process";
import { copyFileSync, mkdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { localCertificate } from "./certificate.js";
import { addingSteps } from "./excelSteps.js";

const root = path.join(path.dirname(fileURLToPath(import.meta.url)), "..");
const certificate = await localCertificate(path.join(root, "out", "certificates"));
// A folder with nothing else in it, since on Windows the folder has to be shared.
const manifest = path.join(root, "out", "excel", "manifest.xml");
mkdirSync(path.dirname(manifest), { recursive: true });
copyFileSync(path.join(root, "manifest.xml"), manifest);
console.log(
  addingSteps({
    manifest,
    address: "https://localhost:3000",
    platform: process.platform,
    ...certificate,
  }),
);

if (!process.argv.includes("--only-tell")) {
  const webpack = path.join(root, "node_modules", "webpack-cli", "bin", "cli.js");
  const given = ["serve", "--mode", "development"];
  const files = ["--env", `key=${certificate.key}`, "--env", `cert=${certificate.cert}`];
  const server = spawn(process.execPath, [webpack, ...given, ...files], {
    cwd: root,
    stdio: "inherit",
  });
  server.on("exit", (code) => {
    process.exitCode = code ?? 1;
  });
}
