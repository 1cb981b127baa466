/** What a page of this service may load and run: told to the browser with every answer. */

/**
 * Everything comes from this address. Styles may stand inline, since the component library sets them while it runs:
 * they can draw but neither run nor fetch from elsewhere. No HTTPS upgrade: on its own machine the service speaks plain
 * HTTP. Under an address of its own it is reached over TLS, and browsers are told to come no other way.
 */
export const headersFor = (address: URL | null) =>
  ({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        objectSrc: ["'none'"],
        scriptSrc: ["'self'"],
        workerSrc: ["'self'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", "data:", "blob:"],
        mediaSrc: ["blob:"],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        manifestSrc: ["'self'"],
        frameSrc: ["'self'", "blob:"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity: address?.protocol === "https:" ? { maxAge: 31_536_000, includeSubDomains: true } : false,
    xFrameOptions: { action: "deny" },
    referrerPolicy: { policy: "no-referrer" },
  }) as const;

/** The file of the worker that reckons pieces of a season, as the build names it. */
const kernelWorker = /^season-piece\.worker-[\w-]+\.js$/;

/**
 * The policy of that worker: scripts of this address, the compiling of WebAssembly, and nothing else at all. The page and
 * every other worker may not compile it (docs/decisions/0003).
 */
export const workerPolicy = (file: string): string | null =>
  kernelWorker.test(file) ? "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'" : null;
