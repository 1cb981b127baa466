import pg from "pg";
import { afterAll, describe, expect, it, onTestFinished } from "vitest";
import { bee, everyKind } from "../../tests/journals/every-kind.ts";
import { writer } from "../../tests/journals/writer.ts";
import { apartContract } from "../../tests/laws/apart-contract.ts";
import { filesContract } from "../../tests/laws/files-contract.ts";
import { membersContract } from "../../tests/laws/members-contract.ts";
import { rightsContract } from "../../tests/laws/rights-contract.ts";
import { serviceStoreContract } from "../../tests/laws/service-store-contract.ts";
import { storageContract } from "../../tests/laws/storage-contract.ts";
import { ask, newDatabase, server } from "../../tests/postgres/database.ts";
import { fold } from "../casebook/index.ts";
import { verifyChain } from "../journal/index.ts";
import { postgresDatabase, schemaOf } from "./postgres.ts";
import { storeIn } from "./server-store.ts";

describe.skipIf(server === null)("on PostgreSQL", async () => {
  const address = server === null ? "" : await newDatabase();
  const [database, other] = [postgresDatabase(address), postgresDatabase(address)];
  afterAll(() => Promise.all([database.close(), other.close()]));
  const open = (programme: string) => storeIn(database.keepingOf(programme), programme);
  const openElsewhere = (programme: string) => storeIn(other.keepingOf(programme), programme);

  storageContract("PostgreSQL", async (programme) => {
    await database.keepingOf(programme).discard();
    return open(programme);
  });

  const ofMembers = postgresDatabase(server === null ? "" : await newDatabase());
  afterAll(() => ofMembers.close());
  membersContract("PostgreSQL", async () => {
    await ofMembers.keepingOf("main").discard();
    return storeIn(ofMembers.keepingOf("main"), "main");
  });
  apartContract("PostgreSQL", async () => {
    await ofMembers.keepingOf("main").discard();
    return storeIn(ofMembers.keepingOf("main"), "main");
  });

  const newPlace = async () => {
    const programme = "main";
    const own = await newDatabase();
    const pools = [postgresDatabase(own), postgresDatabase(own)];
    let opened = 0;
    onTestFinished(async () => void (await Promise.all(pools.map((pool) => pool.close()))));
    return {
      async open() {
        opened += 1;
        const pool = pools[opened % 2];
        if (!pool) throw new Error("two pools, as of two processes");
        return storeIn(pool.keepingOf(programme), programme);
      },
      ask: (statement: string) => ask(`${own}?options=-csearch_path%3D${schemaOf(programme)}`, statement),
    };
  };

  serviceStoreContract("PostgreSQL", newPlace);

  filesContract("PostgreSQL", newPlace);

  rightsContract("PostgreSQL", newPlace);

  it("[SG50] waits for the disk before it acknowledges, though the server's default is not to", async () => {
    const own = await newDatabase();
    const name = new URL(own).pathname.slice(1);
    await ask(own, `alter database ${name} set synchronous_commit = off`);
    const pool = postgresDatabase(own);
    const store = await storeIn(pool.keepingOf("main"), "main");
    await ask(own, "create table seen (setting text)");
    await ask(
      own,
      `create function note() returns trigger language plpgsql as
        $$ begin insert into public.seen values (current_setting('synchronous_commit')); return null; end $$`,
    );
    await ask(own, "create trigger note after insert on skepsis_main.entries execute function public.note()");
    await store.push(writer().write(bee(1)));
    expect(await ask(own, "select * from seen")).toEqual([{ setting: "on" }]);
    await pool.close();
  });

  it("[SG52] keeps each programme in a schema of its own, whatever the length of its name", async () => {
    const long = `a${"-b".repeat(59)}`;
    const names = ["main", "north", `${long.slice(0, -1)}c`, long];
    for (const programme of names) {
      const store = await open(programme);
      await store.push(
        writer({ programme })
          .write(bee(1), bee(2))
          .slice(0, names.indexOf(programme) % 2 ? 2 : 1),
      );
    }
    const counts = [];
    for (const programme of names) counts.push((await (await openElsewhere(programme)).all()).length);
    expect(counts).toEqual([1, 2, 1, 2]);
    expect(new Set(names.map(schemaOf)).size).toBe(names.length);
    expect(Math.max(...names.map((name) => schemaOf(name).length))).toBeLessThanOrEqual(63);
    expect(await database.has(long)).toBe(true);
    expect(await database.has("unheard-of")).toBe(false);
    await ask(address, "update skepsis_main.counters set programme = 'north'");
    await expect(openElsewhere("main")).rejects.toThrow("holds the programme north, not main");
  });

  it("[SG53] removes the demonstration alone, and who has it open goes on with an empty one", async () => {
    const [here, there] = [await open("demonstration"), await openElsewhere("demonstration")];
    await database.keepingOf("north").discard();
    const north = await open("north");
    await north.push(writer({ programme: "north" }).write(bee(1), bee(2)));
    const story = everyKind("demonstration");
    await here.push(story);
    expect(await there.states()).toEqual(fold(story));
    expect(await north.removeDemonstration()).toMatchObject({ ok: false });
    expect((await here.removeDemonstration()).ok).toBe(true);
    expect(await database.has("demonstration")).toBe(false);
    expect(await there.pull(3)).toEqual({ entries: [], cursor: 0, more: false });
    const [entry] = writer({ programme: "demonstration" }).write(bee(1));
    expect((await there.push(entry ? [entry] : [])).heads).toHaveLength(1);
    expect(await there.states()).toEqual(fold(entry ? [entry] : []));
    expect(await north.all()).toHaveLength(2);
  });

  it("[SG53] removes only while nobody makes or changes the same place", async () => {
    const store = await open("demonstration");
    const stranger = new pg.Client({ connectionString: address });
    await stranger.connect();
    await stranger.query("begin");
    await stranger.query("select pg_advisory_xact_lock(hashtext('skepsis'), hashtext('skepsis_demonstration'))");
    let isRemoved = false;
    const removal = store.removeDemonstration().then(() => {
      isRemoved = true;
    });
    await until(async () => isRemoved || (await ask(address, waiting)).length > 0);
    expect(isRemoved).toBe(false);
    await stranger.query("commit");
    await removal;
    await stranger.end();
    expect(await database.has("demonstration")).toBe(false);
  });

  it("[SG53] leaves a whole store when pushes meet the removal", async () => {
    const [here, there] = [await open("demonstration"), await openElsewhere("demonstration")];
    for (let round = 0; round < 6; round += 1) {
      const phone = writer({ programme: "demonstration", device: `phone-${round}` });
      const pushing = Array.from({ length: 6 }, (_, index) => there.push(phone.write(bee(index + 1))));
      await new Promise((resolve) => setTimeout(resolve, 3 * round));
      await Promise.all([here.removeDemonstration(), ...pushing]);
      const last = writer({ programme: "demonstration", device: "last" }).write(bee(1));
      expect((await there.push(last)).refused).toEqual([]);
      const kept = await there.all();
      expect(kept).toContainEqual(last[0]);
      expect(verifyChain(kept, await there.heads()).isIntact).toBe(true);
      expect(await there.states()).toEqual(fold(kept));
    }
  });

  it("[SG24] tries a transaction again that PostgreSQL ended to resolve a deadlock", async () => {
    const own = await newDatabase();
    // Looked for half a second after a wait began, so that the stranger has come to stand in the way by then.
    await ask(own, `alter database ${new URL(own).pathname.slice(1)} set deadlock_timeout = '500ms'`);
    const pool = postgresDatabase(own);
    const store = await storeIn(pool.keepingOf("main"), "main");
    const stranger = new pg.Client({ connectionString: own });
    await stranger.connect();
    await stranger.query("set deadlock_timeout = '20s'"); // so that not the stranger is chosen, but the push
    await stranger.query("begin");
    await stranger.query("lock table skepsis_main.heads in access exclusive mode");
    const push = store.push(writer().write(bee(1)));
    await until(async () => (await ask(own, waiting)).length > 0);
    await stranger.query("update skepsis_main.counters set position = position");
    await stranger.query("commit");
    expect((await push).heads).toMatchObject([{ seq: 1 }]);
    await stranger.end();
    await pool.close(); // a connection that ends hands in its figures
    await until(async () => Number((await ask(own, deadlocks))[0]?.deadlocks) === 1);
  });
});

const waiting =
  "select 1 from pg_stat_activity where wait_event_type = 'Lock' and application_name = 'skepsis' and datname = current_database()";
const deadlocks = "select deadlocks from pg_stat_database where datname = current_database()";

async function until(isSo: () => Promise<boolean>): Promise<void> {
  while (!(await isSo())) await new Promise((resolve) => setTimeout(resolve, 10));
}
