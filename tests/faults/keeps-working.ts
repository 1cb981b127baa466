/** A process of its own that works on records and says aloud what is done, until it is killed. */
import { type Records, recordsBy } from "../../src/storage/server.ts";
import { bee } from "../journals/every-kind.ts";
import { writer } from "../journals/writer.ts";

const [work = "", name = ""] = process.argv.slice(2);
const say = (line: string) => process.stdout.write(`${line}\n`);

/** Writes bees of a specimen of its own, one after another, and says the number that was acknowledged. */
async function pushOn(
  device: string,
  push: (entries: ReturnType<ReturnType<typeof writer>["write"]>) => Promise<number>,
): Promise<void> {
  const phone = writer({ device });
  for (let number = 1; number <= 5000; number += 1) {
    const entries = phone.write({ ...bee(number), about: [`specimen of ${device}`, "reading-1"] });
    say(`${device} ${await push(entries)}`);
  }
}

/** One device pushes alone. */
async function alone(records: Records): Promise<void> {
  const store = await records.open("main");
  say("begins");
  await pushOn(name, async (entries) => (await store.push(entries)).heads[0]?.seq ?? 0);
}

/** Four members push at once, each from a device: what waits for each other is taken in together. */
async function together(records: Records): Promise<void> {
  const store = await records.open("main");
  const at = "2026-04-01T08:00:00.000Z";
  const devices = [1, 2, 3, 4].map((number) => `${name}-${number}`);
  const members: string[] = [];
  for (const device of devices) {
    const person = { name: `keeper of ${device}`, role: "keeper" as const, password: null };
    const admitted = await store.members.admit(person, { by: null, at });
    if (!admitted.ok) throw new Error(`${person.name} is not admitted`);
    members.push(admitted.value.id);
  }
  say("begins");
  await Promise.all(
    devices.map((device, index) => {
      const pusher = { by: members[index] ?? "", at, mayClaim: false, trouble: () => null };
      return pushOn(device, async (entries) => (await store.members.push(entries, pusher)).heads[0]?.seq ?? 0);
    }),
  );
}

/** Opens records of an older shape: its steps are taken. */
async function steps(records: Records): Promise<void> {
  say("begins");
  await records.open("main");
  say("done");
}

const works: Readonly<Record<string, (records: Records) => Promise<void>>> = { alone, together, steps };
const records = recordsBy({ database: process.env.SKEPSIS_DATABASE, folder: process.env.SKEPSIS_DATA ?? "" });
if (!records.ok) throw new Error("no address");
await works[work]?.(records.value);
await records.value.close();
