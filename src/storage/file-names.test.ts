/** What is done for an entry that names a file, whether the file is here or not. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { KyselyPlugin } from "kysely";
import { afterAll, expect, it } from "vitest";
import { attachedDraft, voice } from "../../tests/journals/file-story.ts";
import { sendFile } from "../../tests/laws/files-contract.ts";
import { at, type Person, person } from "../../tests/members.ts";
import { storeIn } from "./server-store.ts";
import { openFile } from "./sqlite.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-names-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Writes down each statement's tree, without its values, and how many rows it gave. */
function writingDown(into: string[]): KyselyPlugin {
  const isValue = (name: string) => name === "value" || name === "values" || name === "queryId";
  return {
    transformQuery({ node }) {
      into.push(JSON.stringify(node, (name, value: unknown) => (isValue(name) ? undefined : value)));
      return node;
    },
    async transformResult({ result }) {
      into.push(`${result.rows.length} rows`);
      return result;
    },
  };
}

/** What the database is asked when a member's entry names a file that another has sent, or has not. */
async function askedWhen(isHere: boolean): Promise<readonly string[]> {
  const asked: string[] = [];
  const keeping = openFile(path.join(folder, `${isHere}.sqlite`));
  const store = await storeIn({ ...keeping, database: keeping.database.withPlugin(writingDown(asked)) }, "main");
  try {
    const [one, two] = [await person(store, "keeper", "one", 46), await person(store, "keeper", "two", 47)];
    const push = (who: Person) =>
      store.members.push(
        who.phone.write(attachedDraft(voice, "audio/webm", { root: who.case, colony: null })),
        ...[{ by: who.id, at, mayClaim: false, trouble: () => null }],
      );
    await push(one);
    if (isHere) await sendFile(store, voice, { sender: one.id });
    asked.length = 0;
    await push(two);
    return asked;
  } finally {
    await store.close();
  }
}

it("[AC42] to take in an entry that names a file is the same work whether another has sent the file or not", async () => {
  const [here, absent] = [await askedWhen(true), await askedWhen(false)];
  expect(absent.length).toBeGreaterThan(10);
  expect(here).toEqual(absent);
});
