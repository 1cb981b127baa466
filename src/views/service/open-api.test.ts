/** The OpenAPI document is whole, and requests made from it are answered as it says. */
import { afterAll, beforeAll, expect, it } from "vitest";
import { errorsOf, schemasOf } from "../../../tests/documented.ts";
import { verbs } from "../../reasoning/index.ts";
import { openProgrammes } from "./programmes.ts";
import { service } from "./service.ts";

type Json = Record<string, unknown>;
let app: Awaited<ReturnType<typeof service>>;
let document: Json;
let compiled: ReturnType<typeof schemasOf>;

beforeAll(async () => {
  app = await service({ version: "1.2.3", page: null, programmes: openProgrammes("none"), port: () => 80 });
  document = (await app.inject({ url: "/api/openapi.json", headers: { host: "localhost" } })).json();
  compiled = schemasOf(document);
});
afterAll(() => app.close());

/** Every object inside a value, with its JSON pointer. */
function* objects(value: unknown, pointer = ""): Generator<readonly [string, Json]> {
  if (typeof value !== "object" || value === null) return;
  if (!Array.isArray(value)) yield [pointer, value as Json];
  for (const [key, child] of Object.entries(value))
    yield* objects(child, `${pointer}/${key.replaceAll("~", "~0").replaceAll("/", "~1")}`);
}

const at = (pointer: string): unknown =>
  pointer
    .slice(1)
    .split("/")
    .map((key) => key.replaceAll("~1", "/").replaceAll("~0", "~"))
    .reduce<unknown>((here, key) => (here as Json | undefined)?.[key], document);

it("has the parts OpenAPI 3.1 asks for", () => {
  expect(document.openapi).toMatch(/^3\.1\.\d+$/);
  expect(document.info).toMatchObject({ title: "Skepsis", version: "1.2.3" });
  const operations = Object.entries(document.paths as Record<string, Json>).flatMap(([path, item]) => {
    expect(path).toMatch(/^\//);
    return Object.entries(item).map(([method, operation]) => {
      expect(["get", "post", "delete"]).toContain(method);
      return { path, operation: operation as Json };
    });
  });
  const ids = operations.map(({ operation }) => operation.operationId);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { path, operation } of operations) {
    for (const [status, response] of Object.entries(operation.responses as Record<string, Json>)) {
      expect(status).toMatch(/^[1-5]\d\d$/);
      expect(response.description, `${path} ${status}`).toEqual(expect.any(String));
    }
    const named = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
    const parameters = (operation.parameters ?? []) as {
      name: string;
      in: string;
      required?: boolean;
      schema: unknown;
    }[];
    expect(parameters.filter((each) => each.in === "path").map(({ name }) => name)).toEqual(named);
    for (const each of parameters) expect(each.schema, `${path} ${each.name}`).toBeDefined();
    for (const each of parameters.filter(({ in: place }) => place === "path")) expect(each.required).toBe(true);
  }
});

it("names every verb, and every reference leads somewhere", () => {
  expect(Object.keys(document.paths as Json)).toEqual(
    expect.arrayContaining(verbs.map(({ name }) => `/api/reasoning/${name}`)),
  );
  const references = [...objects(document)].flatMap(([, { $ref }]) => (typeof $ref === "string" ? [$ref] : []));
  expect(references.length).toBeGreaterThan(0);
  for (const reference of references) expect(at(reference.slice(1)), reference).toBeDefined();
});

it("holds schemas that compile", () => {
  const pointers = [...objects(document)].flatMap(([pointer, { schema }]) => (schema ? [`${pointer}/schema`] : []));
  expect(pointers.length).toBeGreaterThan(verbs.length);
  for (const pointer of pointers) expect(() => compiled(pointer), pointer).not.toThrow();
});

it.each(verbs.map(({ name }) => [name]))(
  "%s: its example fits the request, and its answer the response",
  async (name) => {
    const pointer = `/paths/~1api~1reasoning~1${name}/post`;
    const content = at(`${pointer}/requestBody/content/application~1json`) as { example: object };
    const request = compiled(`${pointer}/requestBody/content/application~1json/schema`);
    expect(request(content.example), errorsOf(request)).toBe(true);
    const post = (payload: object) =>
      app.inject({ method: "POST", url: `/api/reasoning/${name}`, headers: { host: "localhost" }, payload });
    const good = await post(content.example);
    expect(good.statusCode).toBe(200);
    const answer = compiled(`${pointer}/responses/200/content/application~1json/schema`);
    expect(answer(good.json()), errorsOf(answer)).toBe(true);

    expect(answer({})).toBe(false);

    const bad = await post({ ...content.example, noSuchField: 1 });
    expect(bad.statusCode).toBe(422);
    const problems = compiled(`${pointer}/responses/422/content/application~1json/schema`);
    expect(problems(bad.json()), errorsOf(problems)).toBe(true);
    expect(bad.json().problems[0].field).toBe("noSuchField");
  },
);
