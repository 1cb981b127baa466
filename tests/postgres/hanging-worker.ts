/** A process that takes a chunk of a queue, says so, and never ends: to be killed. Its argument is the database's address. */
import { openChunkQueue } from "../../src/storage/server.ts";

const [address = ""] = process.argv.slice(2);
const queue = await openChunkQueue(address, { say: () => undefined, heartbeatSeconds: 10, lookSeconds: 1 });
await queue.work((job) => {
  process.stdout.write(`took ${job.number}\n`);
  return new Promise(() => setInterval(() => undefined, 1000));
});
