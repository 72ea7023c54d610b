/**
 * The content policy of each page we serve, as its `<meta>` tag has it. Pages load scripts, styles
 * and data from where they themselves come from, and nothing runs that stands inside the page.
 */

/** The one style that is allowed inside a page: the empty one, into which Fluent puts its rules. */
const emptyStyle = "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='";

const own = {
  "default-src": ["'none'"],
  "script-src": ["'self'"],
  "style-src": ["'self'", emptyStyle],
  "img-src": ["'self'", "data:", "blob:"],
  "font-src": ["'self'", "data:"],
  "connect-src": ["'self'"],
  // A worker goes by the policy that its own file is served with and not by the page's: the solver's
  // WebAssembly runs there, and the page need not allow any. Where a server sends a policy with every
  // file, the solver wants 'wasm-unsafe-eval' in it; without, cuts are planned in plain JavaScript.
  "worker-src": ["'self'"],
  "base-uri": ["'none'"],
  "form-action": ["'none'"],
};

const office = "https://appsforoffice.microsoft.com";

/** The embedded page: nothing but our own. */
export const embeddedPolicy = policy(own);

/** The pane in Excel: Office.js comes from Microsoft's address, as the platform asks. */
export const excelPolicy = policy({
  ...own,
  "script-src": [...own["script-src"], office],
  // Office.js opens a frame of its own to tell Microsoft about its use, and one to ask whether a web
  // address that it does not know is Excel's.
  "frame-src": ["https://telemetryservice.firstpartyapps.oaspapps.com", office],
});

function policy(rules) {
  return Object.entries(rules)
    .map(([name, sources]) => `${name} ${sources.join(" ")}`)
    .join("; ");
}
