/** Builds the programs that run without the sources: the command line, with the service inside. */
import { readFileSync } from "node:fs";
import { defineConfig } from "vite";

const { dependencies, engines } = JSON.parse(readFileSync(new URL("package.json", import.meta.url), "utf8")) as {
  dependencies: Record<string, string>;
  engines: { node: string };
};
const packages = Object.keys(dependencies);

export default defineConfig({
  publicDir: false,
  build: {
    outDir: "dist/cli",
    emptyOutDir: true,
    target: `node${engines.node.replaceAll(/\D/g, "")}`,
    ssr: true,
    rolldownOptions: {
      // Threads are files of their own: the service starts them by name.
      input: [
        "src/storage/integrity-thread.ts",
        "src/views/cli/skepsis.ts",
        "src/views/service/reckoning-thread.ts",
        "src/views/service/season-thread.ts",
      ],
      // Packages stay packages: better-sqlite3 brings a binary of its own, and each is installed beside the program.
      external: (id: string) => packages.some((name) => id === name || id.startsWith(`${name}/`)),
      output: { entryFileNames: "[name].js", chunkFileNames: "[name]-[hash].js" },
    },
  },
});
