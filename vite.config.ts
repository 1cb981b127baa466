/** Builds the page into dist/web: scripts and styles without inline code, fonts of its own, and a worker for use offline. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";

const root = import.meta.dirname;
const output = path.join(root, "dist", "web");

/** The licences of the fonts travel with the fonts. */
function fontLicences(): Plugin {
  const folder = path.join(root, "src", "views", "web", "look", "fonts");
  return {
    name: "font-licences",
    apply: "build",
    generateBundle() {
      for (const file of readdirSync(folder).filter((name) => name.endsWith(".txt")))
        this.emitFile({ type: "asset", fileName: `licences/${file}`, source: readFileSync(path.join(folder, file)) });
    },
  };
}

/** The demonstration casebook, which the page fetches when someone opens it. */
function demonstration(): Plugin {
  const journal = path.join(root, "examples", "demonstration", "journal.jsonl");
  const address = "demonstration.jsonl";
  return {
    name: "demonstration",
    generateBundle() {
      this.emitFile({ type: "asset", fileName: address, source: readFileSync(journal) });
    },
    configureServer(server) {
      server.middlewares.use(`/${address}`, (_, response) => response.end(readFileSync(journal)));
    },
  };
}

/** The pure folders do nothing by being loaded, so what a page does not use of them stays out of it. */
const treeshake = {
  moduleSideEffects: (id: string) =>
    !/[/\\]src[/\\](units|numerics|knowledge|journal|casebook|reasoning|transfer|access|views[/\\](words|model|report))[/\\]/.test(
      id,
    ),
};

export default defineConfig({
  root,
  plugins: [
    react(),
    VitePWA({
      registerType: "prompt",
      injectRegister: null,
      manifest: {
        name: "Skepsis",
        short_name: "Skepsis",
        description: "From the first worried call about failing honey bee colonies to a checked outcome.",
        start_url: "/",
        display: "standalone",
        background_color: "#f2f3ef",
        theme_color: "#f2f3ef",
        icons: [
          { src: "icon-192.png", sizes: "192x192", type: "image/png" },
          { src: "icon-512.png", sizes: "512x512", type: "image/png" },
          { src: "icon.svg", sizes: "any", type: "image/svg+xml" },
        ],
      },
      workbox: {
        globPatterns: ["**/*.{js,css,html,woff2,svg,png,txt,jsonl}"],
        navigateFallback: "index.html",
        navigateFallbackDenylist: [/^\/api\//],
        clientsClaim: false,
        skipWaiting: false,
      },
    }),
    fontLicences(),
    demonstration(),
  ],
  worker: { format: "es", rolldownOptions: { treeshake } },
  build: {
    outDir: output,
    emptyOutDir: true,
    target: "es2022",
    // Strict content security: nothing as a data address, no code in the page itself.
    assetsInlineLimit: 0,
    manifest: true,
    modulePreload: { polyfill: false },
    rolldownOptions: { treeshake },
  },
  server: { proxy: { "/api": "http://127.0.0.1:4230" } },
});
