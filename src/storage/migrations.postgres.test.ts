import { describe } from "vitest";
import { migrationContract } from "../../tests/laws/migration-contract.ts";
import { ask, newDatabase, server } from "../../tests/postgres/database.ts";
import { postgresDatabase } from "./postgres.ts";

const shape = `
  select c.relname, a.attname, format_type(a.atttypid, a.atttypmod) as type, a.attnotnull
    from pg_attribute a join pg_class c on c.oid = a.attrelid join pg_namespace n on n.oid = c.relnamespace
    where n.nspname = 'skepsis_main' and c.relkind = 'r' and a.attnum > 0
  union all
  select c.relname, i.relname, pg_get_indexdef(i.oid), x.indisunique
    from pg_index x join pg_class i on i.oid = x.indexrelid join pg_class c on c.oid = x.indrelid
    join pg_namespace n on n.oid = c.relnamespace where n.nspname = 'skepsis_main'
  union all
  select c.relname, k.conname, pg_get_constraintdef(k.oid), true
    from pg_constraint k join pg_class c on c.oid = k.conrelid
    join pg_namespace n on n.oid = c.relnamespace where n.nspname = 'skepsis_main'
  order by 1, 2, 3`;

describe.skipIf(server === null)("on PostgreSQL", () => {
  migrationContract("PostgreSQL", async () => {
    const address = await newDatabase();
    const pools = [postgresDatabase(address), postgresDatabase(address)];
    let opened = 0;
    return {
      keeping() {
        opened += 1;
        return (pools[opened % 2] ?? postgresDatabase(address)).keepingOf("main");
      },
      run: async (statements) => void (await ask(address, statements)),
      shape: () => ask(address, shape),
      close: async () => void (await Promise.all(pools.map((pool) => pool.close()))),
    };
  });
});
