/**
 * Prints the path of a Chromium browser for the tests. In order: the one named by the environment,
 * an installed one, the one that an optional package brings (Linux on 64-bit Intel and AMD only).
 * The environment may also name `own`, for the package's where another is installed.
 */
import { existsSync, mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const environmentName = "CRIBSHEET_BROWSER";

const onWindows = [
  process.env["PROGRAMFILES"],
  process.env["PROGRAMFILES(X86)"],
  process.env["LOCALAPPDATA"],
]
  .filter((folder) => folder !== undefined)
  .flatMap((folder) => [
    join(folder, "Google/Chrome/Application/chrome.exe"),
    join(folder, "Microsoft/Edge/Application/msedge.exe"),
  ]);

const installed = {
  linux: [
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/usr/bin/google-chrome",
    "/usr/bin/google-chrome-stable",
    "/usr/bin/microsoft-edge",
  ],
  darwin: [
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
  ],
  win32: onWindows,
};

async function findBrowser() {
  const named = process.env[environmentName];
  if (named === "own") return broughtBrowser();
  if (named !== undefined && named !== "") {
    if (existsSync(named)) return named;
    throw new Error(`${environmentName} is ${named}, and there is no such file.`);
  }
  const found = (installed[process.platform] ?? []).find((path) => existsSync(path));
  return found ?? (await broughtBrowser());
}

async function broughtBrowser() {
  if (process.platform === "linux" && process.arch === "x64") {
    // The package unpacks its libraries only where it believes to be on that platform.
    process.env["AWS_LAMBDA_JS_RUNTIME"] ??= "nodejs20.x";
    // It unpacks into the temporary folder and would take another version's files for its own.
    const folder = join(tmpdir(), "cribsheet-chromium-147");
    mkdirSync(folder, { recursive: true });
    process.env["TMPDIR"] = folder;
    try {
      const { default: chromium } = await import("@sparticuz/chromium");
      return await chromium.executablePath();
    } catch {
      // The package is optional: the message below says what to do without it.
    }
  }
  throw new Error(
    `The browser tests need Chrome, Edge or Chromium, and none was found.
Install one of them (Debian and Ubuntu: apt-get install chromium; Windows and Mac: the usual
installer), or set ${environmentName} to the path of one that is installed elsewhere.`,
  );
}

findBrowser().then(
  (path) => {
    console.log(path);
  },
  (fault) => {
    console.error(fault.message);
    process.exitCode = 1;
  },
);
