/** The programs as built: the command line runs without the sources, and says in words that a Node is too old. */
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, it } from "vitest";

const program = "dist/cli/skepsis.js";

it("answers from the built file", () => {
  const run = spawnSync(
    process.execPath,
    [program, "sample-size", "--design-prevalence", "0.05", "--sensitivity", "1", "--json"],
    { encoding: "utf8" },
  );
  expect(run.stderr).toBe("");
  expect(run.status).toBe(0);
  expect(JSON.parse(run.stdout).bees).toBe(59);
});

it("knows its own version from where it lies", () => {
  const { version } = JSON.parse(readFileSync("package.json", "utf8"));
  const run = spawnSync(process.execPath, [program, "--version"], { encoding: "utf8" });
  expect(run.stdout).toBe(`${version}\n`);
});

it("refuses an older Node in words, before anything else is loaded", () => {
  const older = [
    "Object.defineProperty(process.versions, 'node', { value: '20.19.0' });",
    `import(${JSON.stringify(`${process.cwd()}/${program}`)});`,
  ];
  const run = spawnSync(process.execPath, ["-e", older.join("")], { encoding: "utf8" });
  expect(run.status).toBe(1);
  expect(run.stdout).toBe("");
  expect(run.stderr).toContain("needs Node 24 or newer; this is Node 20.19.0");
});

it("serves reasoning from the built files: its threads lie beside it", async () => {
  const data = mkdtempSync(path.join(tmpdir(), "skepsis-built-"));
  const service = spawn(process.execPath, [program, "serve", "--port", "0"], {
    env: { ...process.env, SKEPSIS_DATA: data },
  });
  try {
    const address = await new Promise<string>((resolve, reject) => {
      let said = "";
      service.stdout.on("data", (text) => {
        said += text;
        const found = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
        if (found) resolve(found[0]);
      });
      service.on("exit", () => reject(new Error(said)));
    });
    const season = {
      start: { date: "2026-08-01", bees: 30000, infestedShare: 0.08 },
      ...{ until: "2026-09-01", draws: 100 },
    };
    const reply = await fetch(`${address}/api/reasoning/season`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(season),
    });
    expect(reply.status).toBe(200);
    expect((await reply.json()).days).toHaveLength(32);
  } finally {
    const gone = new Promise((resolve) => service.once("exit", resolve));
    service.kill();
    await gone;
    rmSync(data, { recursive: true, force: true });
  }
}, 60_000);

it("[AC33] the bill of materials names every library that ships, with its licence, and no place of download", () => {
  const text = readFileSync("dist/sbom.cdx.json", "utf8");
  const bill = JSON.parse(text) as {
    bomFormat: string;
    metadata: { component: { name: string } };
    components: { name: string; version: string; licenses: unknown[] }[];
  };
  expect([bill.bomFormat, bill.metadata.component.name]).toEqual(["CycloneDX", "skepsis"]);
  const lock = JSON.parse(readFileSync("package-lock.json", "utf8")) as {
    packages: Record<string, { version: string; dev?: boolean; devOptional?: boolean }>;
  };
  const shipped = Object.entries(lock.packages).filter(([name, each]) => name !== "" && !each.dev && !each.devOptional);
  const named = new Set(bill.components.map(({ name, version }) => `${name}@${version}`));
  const missing = shipped
    .map(([place, { version }]) => `${place.slice(place.lastIndexOf("node_modules/") + 13)}@${version}`)
    .filter((each) => !named.has(each));
  expect(shipped.length).toBeGreaterThan(50);
  expect(missing).toEqual([]);
  expect(bill.components.filter(({ licenses }) => licenses.length === 0)).toEqual([]);
  expect(text).not.toMatch(/"distribution"|\.tgz/);
});
