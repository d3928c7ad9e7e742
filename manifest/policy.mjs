// What the shipped pages may load and ask, as Content-Security-Policy. Used by the build and by `npm start`.
// Source: W3C, “Content Security Policy Level 3”.

/** Where Office.js comes from, and the one script that it loads from elsewhere (stated in its own source). */
const officeScripts = ["https://appsforoffice.microsoft.com", "https://ajax.aspnetcdn.com"];

/** Everything from the page’s own address, and nothing anywhere else. */
const own = {
  "default-src": "'none'",
  // The solver is WebAssembly; no text is ever run as a script.
  "script-src": "'self' 'wasm-unsafe-eval'",
  "worker-src": "'self'",
  // The grid and the controls of the pane write their rules into the page while it runs, and set styles of elements.
  "style-src": "'self' 'unsafe-inline'",
  "img-src": "'self' data: blob:",
  "font-src": "'self' data:",
  "connect-src": "'self'",
  "manifest-src": "'self'",
  "frame-src": "'none'",
  "form-action": "'self'",
  "base-uri": "'none'",
};

/** The page without Excel. */
export const pagePolicy = asText(own);

/** The pane inside Excel, which needs Office.js. Excel on the web shows it in a frame, so frames around it are not forbidden. */
export const panePolicy = asText({
  ...own,
  "script-src": [own["script-src"], ...officeScripts].join(" "),
  "connect-src": [own["connect-src"], officeScripts[0]].join(" "),
});

/** Headers for what `npm start` serves. `path` is that of the address, with its leading slash. */
export function headersFor(path) {
  const isPane = path.startsWith("/taskpane.html");
  return {
    "Content-Security-Policy": isPane ? panePolicy : `${pagePolicy}; frame-ancestors 'none'`,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
  };
}

function asText(directives) {
  return Object.entries(directives)
    .map((directive) => directive.join(" "))
    .join("; ");
}
