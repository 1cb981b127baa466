/** A process of its own that pushes to a store and says aloud what was acknowledged, until it is killed. */
import { openServerStore } from "../../src/storage/server.ts";
import { bee } from "../journals/every-kind.ts";
import { writer } from "../journals/writer.ts";

const [file = "", device = ""] = process.argv.slice(2);
const store = await openServerStore({ file, programme: "main" });
const phone = writer({ device });
for (let number = 1; number <= 5000; number += 1) {
  const { heads } = await store.push(phone.write(bee(number)));
  process.stdout.write(`${heads[0]?.seq}\n`);
}
