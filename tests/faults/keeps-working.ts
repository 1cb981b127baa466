/** A process of its own that works on a store and says aloud what is done, until it is killed. */
import { openServerStore } from "../../src/storage/server.ts";
import { bee } from "../journals/every-kind.ts";
import { writer } from "../journals/writer.ts";

const [work = "", file = "", device = ""] = process.argv.slice(2);
const say = (line: string) => process.stdout.write(`${line}\n`);

/** Pushes bees of a specimen of its own, one after another. */
async function push(): Promise<void> {
  const store = await openServerStore({ file, programme: "main" });
  say("begins");
  const phone = writer({ device });
  for (let number = 1; number <= 5000; number += 1) {
    const draft = bee(number);
    const { heads } = await store.push(phone.write({ ...draft, about: [`specimen of ${device}`, "reading-1"] }));
    say(`${heads[0]?.seq}`);
  }
}

/** Opens a file of an older shape: its steps are taken. */
async function migrate(): Promise<void> {
  say("begins");
  await openServerStore({ file, programme: "main" });
  say("1");
}

await (work === "push" ? push() : migrate());
