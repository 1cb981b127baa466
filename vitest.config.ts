/** Three groups of tests: what needs no build, what needs a PostgreSQL, what looks at the built page in a real browser. */
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "unit",
          include: ["src/**/*.test.{ts,tsx}", "tests/{golden,reference,laws,tidy,faults,examples}/**/*.test.ts"],
          exclude: ["**/*.postgres.test.ts"],
          environment: "node",
          testTimeout: 20_000,
          // No module keeps state, so files share what is loaded. A test that needs its own world makes it.
          isolate: false,
          maxWorkers: "100%",
        },
      },
      {
        test: {
          name: "postgres",
          include: ["{src,tests}/**/*.postgres.test.ts"],
          environment: "node",
          globalSetup: "tests/postgres/set-up.ts",
          testTimeout: 60_000,
          hookTimeout: 60_000,
          isolate: false,
          maxWorkers: "100%",
        },
      },
      {
        test: {
          name: "built",
          include: ["tests/{browser,budgets,programs}/**/*.test.ts"],
          environment: "node",
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // Each file has its own service and browser; two of them fill two cores, more would only wait for each other.
          maxWorkers: 2,
        },
      },
    ],
  },
});
