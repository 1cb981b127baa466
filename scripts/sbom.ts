/** Writes dist/sbom.cdx.json: every library that ships, with version, licence and hash, as a CycloneDX bill of materials. */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));

interface Component {
  readonly name?: string;
  readonly version?: string;
  readonly externalReferences?: readonly { readonly type: string; readonly url: string }[];
}

/** Without where a copy was downloaded from: that is the builder's matter, and the lock file names none either. */
const withoutDownloads = (component: Component): Component => ({
  ...component,
  externalReferences: (component.externalReferences ?? []).filter(({ type }) => type !== "distribution"),
});

/** The bill, made from the lock file. */
export function billOfMaterials(): object {
  // Not with `--omit dev`: npm then leaves out libraries that ship when a tool of ours needs them as well.
  const words = ["sbom", "--sbom-format", "cyclonedx", "--package-lock-only"];
  const made = spawnSync(process.platform === "win32" ? "npm.cmd" : "npm", words, {
    ...{ cwd: root, encoding: "utf8", maxBuffer: 64 * 1024 * 1024 },
    shell: process.platform === "win32",
  });
  if (made.status !== 0) throw new Error(`npm sbom: ${made.stderr}`);
  const bill = JSON.parse(made.stdout) as { metadata: { component: Component }; components: readonly Component[] };
  const lock = JSON.parse(readFileSync(path.join(root, "package-lock.json"), "utf8")) as {
    packages: Readonly<Record<string, { readonly version: string; readonly dev?: boolean }>>;
  };
  const ships = new Set(
    Object.entries(lock.packages)
      .filter(([, each]) => !each.dev)
      .map(([place, each]) => `${place.slice(place.lastIndexOf("node_modules/") + 13)}@${each.version}`),
  );
  const { name, version } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as {
    name: string;
    version: string;
  };
  return {
    ...bill,
    // npm names the project by its folder.
    metadata: { ...bill.metadata, component: { ...withoutDownloads(bill.metadata.component), name, version } },
    components: bill.components.filter(({ name, version }) => ships.has(`${name}@${version}`)).map(withoutDownloads),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(path.join(root, "dist"), { recursive: true });
  writeFileSync(path.join(root, "dist", "sbom.cdx.json"), `${JSON.stringify(billOfMaterials(), null, 2)}\n`);
}
