/** Runs once before all browser tests: finds the browser, and builds the pages if they are old. */
const { execFileSync } = require("node:child_process");
const {
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
} = require("node:fs");
const path = require("node:path");

const root = path.join(__dirname, "../..");
const site = path.join(root, "out/site");
const built = path.join(root, "out/site.built");
const lock = path.join(root, "out/site.lock");

module.exports = async function globalSetup() {
  process.env.CRIBSHEET_BROWSER = findBrowser();
  process.env.CRIBSHEET_SITE = site;
  mkdirSync(path.join(root, "out/screenshots"), { recursive: true });
  await withLock(() => {
    if (isFresh()) return;
    const webpack = path.join(root, "node_modules/webpack/bin/webpack.js");
    const options = ["--env", "rig", "--env", `output=${site}`];
    execFileSync(process.execPath, [webpack, "--mode", "production", ...options], {
      cwd: root,
      stdio: ["ignore", "ignore", "inherit"],
    });
    writeFileSync(built, "");
  });
};

function findBrowser() {
  const script = path.join(__dirname, "findBrowser.mjs");
  try {
    return execFileSync(process.execPath, [script], { encoding: "utf8", stdio: "pipe" }).trim();
  } catch (fault) {
    throw new Error(fault.stderr || fault.message);
  }
}

/** Whether the pages are younger than everything that they are made from. */
function isFresh() {
  if (!existsSync(built) || !existsSync(site)) return false;
  const sources = [
    "src",
    "build",
    "assets",
    "tests/browser/rig",
    "tests/adapters/embedded",
    "webpack.config.js",
    "manifest.xml",
    "package-lock.json",
  ];
  const youngest = Math.max(...sources.map((source) => youngestIn(path.join(root, source))));
  return statSync(built).mtimeMs > youngest;
}

function youngestIn(place) {
  if (!existsSync(place)) return 0;
  const { mtimeMs } = statSync(place);
  if (!statSync(place).isDirectory()) return mtimeMs;
  return Math.max(mtimeMs, ...readdirSync(place).map((name) => youngestIn(path.join(place, name))));
}

/** Two runs at once must not build into the same folder. A run that was ended by force holds nothing. */
async function withLock(act) {
  while (!tookLock()) {
    if (isHeld()) await new Promise((resolve) => setTimeout(resolve, 500));
    else rmSync(lock, { force: true, recursive: true });
  }
  try {
    act();
  } finally {
    rmSync(lock, { force: true });
  }
}

function tookLock() {
  try {
    writeFileSync(lock, String(process.pid), { flag: "wx" });
    return true;
  } catch {
    return false;
  }
}

/** Whether the run that wrote the lock is still there. */
function isHeld() {
  try {
    process.kill(Number(readFileSync(lock, "utf8")), 0);
    return true;
  } catch {
    return false;
  }
}
