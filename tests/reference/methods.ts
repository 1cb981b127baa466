/** Every method of the adapter, by the name the cases use; the folder is read, so a new topic is a new file. */
import { readdirSync } from "node:fs";
import type { Method } from "./compare.ts";

const folder = new URL("./adapter/", import.meta.url);

/** @throws Error when two topics name one method */
export async function loadMethods(): Promise<Readonly<Record<string, Method>>> {
  const methods: Record<string, Method> = {};
  for (const file of readdirSync(folder).filter((name) => name.endsWith(".ts"))) {
    const topic = (await import(new URL(file, folder).href)) as { readonly methods: Readonly<Record<string, Method>> };
    for (const [name, method] of Object.entries(topic.methods)) {
      if (Object.hasOwn(methods, name)) throw new Error(`two topics name the method ${name}`);
      methods[name] = method;
    }
  }
  return methods;
}
