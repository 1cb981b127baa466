/** Holds every answer that a test gets out of the service to the service's own OpenAPI document. */
import { Ajv2020 } from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import type { FastifyInstance } from "fastify";
import { openApiDocument } from "../src/views/service/open-api.ts";

interface Response {
  readonly content?: Readonly<Record<string, unknown>>;
}
type Operations = Readonly<Record<string, { readonly responses: Readonly<Record<string, Response>> }>>;

const escaped = (key: string): string => key.replaceAll("~", "~0").replaceAll("/", "~1");

/** Schemas of a document by their pointers, references resolved inside the document; each is compiled once. */
export function schemasOf(document: Readonly<Record<string, unknown>>) {
  const ajv = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true });
  addFormats.default(ajv);
  ajv.addVocabulary(["openapi", "jsonSchemaDialect", "info", "servers", "paths", "components"]);
  ajv.addSchema({ $id: "document", ...document }, "document", undefined, false);
  const made = new Map<string, ReturnType<typeof ajv.compile>>();
  return (pointer: string) => {
    const fits = made.get(pointer) ?? ajv.compile({ $ref: `document#${pointer}` });
    made.set(pointer, fits);
    return fits;
  };
}

/** What a value lacks of a schema it was last held to, in words. */
export const errorsOf = ({ errors }: ReturnType<ReturnType<typeof schemasOf>>): string =>
  (errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`).join(", ");

const document = openApiDocument("0");
const paths = document.paths as Readonly<Record<string, Operations>>;
const fitFor = schemasOf(document);

export interface Documented {
  /** How many answers were held to a schema, by operation and status. */
  readonly held: ReadonlyMap<string, number>;
  /** What was answered otherwise than the document says. */
  readonly misfits: readonly string[];
}

/** Holds the answers of a service that has not answered yet. Routes that the document does not name are left alone. */
export function documented(app: FastifyInstance): Documented {
  const held = new Map<string, number>();
  const misfits: string[] = [];
  app.addHook("onSend", async (request, reply, payload) => {
    const path = (request.routeOptions.url ?? "").replace(/:(\w+)/g, "{$1}");
    const method = request.method.toLowerCase();
    const operation = paths[path]?.[method];
    if (operation === undefined || path === "/api/openapi.json") return payload;
    const status = String(reply.statusCode);
    const name = `${request.method} ${path} ${status}`;
    const response = operation.responses[status];
    if (response === undefined) misfits.push(`${name}: the document knows no such status`);
    if (response?.content?.["application/json"] === undefined || typeof payload !== "string") return payload;
    const fits = fitFor(`/paths/${escaped(path)}/${method}/responses/${status}/content/application~1json/schema`);
    held.set(name, (held.get(name) ?? 0) + 1);
    if (fits(JSON.parse(payload)) !== true) misfits.push(`${name}: ${errorsOf(fits)}`);
    return payload;
  });
  return { held, misfits };
}
