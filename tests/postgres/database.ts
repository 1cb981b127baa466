/** A database of its own for a test file, on the server that the set-up started. */
import { randomBytes } from "node:crypto";
import pg from "pg";
import { inject } from "vitest";
import "./set-up.ts";

/** Address of the tests' server; null when there is none and the tests are left out. */
export const server: string | null = inject("postgres");

/** Makes a new, empty database and returns its address. */
export async function newDatabase(at: string = needed()): Promise<string> {
  const name = `test_${randomBytes(6).toString("hex")}`;
  await ask(at, `create database ${name}`);
  return databaseAt(at, name);
}

/** One statement, and what it gives back. */
export async function ask(address: string, statement: string): Promise<readonly Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: address });
  await client.connect();
  try {
    return (await client.query(statement)).rows;
  } finally {
    await client.end();
  }
}

function databaseAt(address: string, name: string): string {
  const url = new URL(address);
  url.pathname = `/${name}`;
  return url.href;
}

function needed(): string {
  if (server === null) throw new Error("this test needs a server");
  return server;
}
