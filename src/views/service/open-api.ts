/** The OpenAPI 3.1 document, made from the verbs' schemas, so that it cannot drift from what is served. */
import { type Shape, type Verb, verbs } from "../../reasoning/index.ts";

import { memberPaths } from "./open-api-members.ts";
import { programmePaths } from "./open-api-programmes.ts";

type Json = Readonly<Record<string, unknown>>;

/** The whole document. */
export function openApiDocument(version: string): Json {
  return {
    openapi: "3.1.0",
    jsonSchemaDialect: "https://json-schema.org/draft/2020-12/schema",
    info: {
      title: "Skepsis",
      version,
      summary: "From the first worried call about failing honey bee colonies to a checked outcome.",
      license: { name: "MIT", identifier: "MIT" },
    },
    servers: [{ url: "/" }],
    paths: {
      "/healthz": { get: alive },
      ...withEverywhere({
        "/api/health": { get: health },
        ...Object.fromEntries(verbs.map((verb) => [`/api/reasoning/${verb.name}`, { post: reasoning(verb) }])),
        ...programmePaths,
        ...memberPaths,
      }),
    },
    components: { schemas: { Problems: problems, Refused: refused, Notice: notice } },
  };
}

const json = (schema: Json, example?: unknown): Json => ({
  "application/json": example === undefined ? { schema } : { schema, example },
});
const reference = (name: string): Json => ({ $ref: `#/components/schemas/${name}` });
const trouble = (description: string): Json => ({ description, content: json(reference("Problems")) });

/** What any operation may answer in place of its own. */
const everywhere: Json = {
  "421": trouble("The name of the host is none of the service's."),
  "429": trouble("Too many requests from one address."),
  "500": trouble("An error of ours."),
  "503": trouble("The database is away or busy for too long."),
};
const ofWrites: Json = {
  "400": trouble("The body is none that can be read."),
  "403": trouble("The request comes from a page of another origin."),
  "413": trouble("The body is too large."),
  "415": trouble("The body is of a sort that is not taken here."),
};

interface Operation {
  readonly responses: Json;
}
type Paths = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/** Every operation with what any may answer; its own words for a status win. */
const withEverywhere = (paths: Paths): Json =>
  Object.fromEntries(
    Object.entries(paths).map(([path, operations]) => [
      path,
      Object.fromEntries(
        Object.entries(operations as Readonly<Record<string, Operation>>).map(([method, operation]) => {
          const responses = { ...everywhere, ...(method === "get" ? {} : ofWrites), ...operation.responses };
          return [method, { ...operation, responses }];
        }),
      ),
    ]),
  );

const health: Json = {
  operationId: "health",
  summary: "Who answers, and in which version.",
  responses: {
    "200": {
      description: "The service is there.",
      content: json({
        type: "object",
        properties: { name: { const: "skepsis" }, version: { type: "string" }, knowledge: { type: "string" } },
        required: ["name", "version", "knowledge"],
      }),
    },
  },
};

const alive: Json = {
  operationId: "alive",
  summary: "That the service answers, for whoever watches over it.",
  responses: {
    "200": {
      description: "It answers.",
      content: json({ type: "object", properties: { ok: { const: true } }, required: ["ok"] }),
    },
  },
};

const reasoning = (verb: Verb): Json => ({
  operationId: verb.name,
  summary: verb.summary,
  description: [`Rests on: ${verb.assumptions.join(" ")}`, `Source: ${verb.source}`].join("\n\n"),
  requestBody: { required: true, content: json(withoutDialect(verb.inputShape), verb.example) },
  responses: {
    "200": {
      description: "The answer, with `notices` when there are any; or `refused`, when a rule stands in the way.",
      content: json({ anyOf: [answerOf(verb), reference("Refused")] }),
    },
    "400": trouble("The body is no JSON."),
    "413": trouble("The body is too large."),
    "415": trouble("The body is not application/json."),
    "422": trouble("The input does not fit: each problem names field, given and expected."),
    "401": trouble("Nobody is signed in, where the service asks for it."),
    "503": trouble("It takes too long to be reckoned here."),
  },
});

/** The answer as served: the verb's own fields, with notices and refusals beside them. */
function answerOf(verb: Verb): Json {
  const shape = withoutDialect(verb.outputShape);
  const properties = (shape.properties ?? {}) as Json;
  const besides = { refused: refusals, notices: { type: "array", items: reference("Notice") } };
  return { ...shape, properties: { ...besides, ...properties } };
}

const withoutDialect = ({ $schema: _dialect, ...shape }: Shape & { readonly $schema?: unknown }): Json => ({
  ...shape,
});

const nullable = (type: string): Json => ({ type: [type, "null"] });

const problems: Json = {
  type: "object",
  properties: {
    problems: {
      type: "array",
      minItems: 1,
      items: {
        type: "object",
        properties: {
          field: {
            ...nullable("string"),
            description: "Path in the input, such as tests[0].positive; null for the whole.",
          },
          given: { description: "What was given, as it came; null when nothing was." },
          expected: nullable("string"),
          message: { type: "string" },
        },
        required: ["field", "given", "expected", "message"],
      },
    },
  },
  required: ["problems"],
};

const refusals: Json = {
  type: "array",
  minItems: 1,
  items: {
    type: "object",
    properties: { rule: { type: "string" }, reason: { type: "string" } },
    required: ["rule", "reason"],
  },
};

const refused: Json = { type: "object", properties: { refused: refusals }, required: ["refused"] };

const notice: Json = {
  type: "object",
  properties: {
    code: { type: "string" },
    severity: { enum: ["warned", "noted", "unknown"] },
    field: nullable("string"),
    message: { type: "string" },
  },
  required: ["code", "severity", "field", "message"],
};
