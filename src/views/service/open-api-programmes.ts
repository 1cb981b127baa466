/** The part of the OpenAPI document about the exchange of entries. */
import * as z from "zod";
import { mediaTypes } from "../../journal/index.ts";
import { partQuery } from "./file-routes.ts";
import { apartOver } from "./open-api-apart.ts";
import { forecasts } from "./open-api-forecasts.ts";
import { pullQuery, pushBody } from "./programme-routes.ts";

type Json = Readonly<Record<string, unknown>>;

const json = (schema: Json): Json => ({ "application/json": { schema } });
const trouble = (description: string): Json => ({
  description,
  content: json({ $ref: "#/components/schemas/Problems" }),
});
const noSession = trouble("The programme has members, and nobody is signed in.");
const hash: Json = { type: "string", pattern: "^[0-9a-f]{64}$" };
const programme: Json = {
  name: "programme",
  in: "path",
  required: true,
  schema: { type: "string", pattern: "^[a-z0-9](-?[a-z0-9]){0,59}$" },
};

const file: Json = {
  ...{ name: "file", in: "path", required: true },
  ...{ description: "SHA-256 of the file, as its entry names it.", schema: hash },
};
const bytes: Json = { type: "string", format: "binary" };
const standing: Json = {
  type: "object",
  properties: {
    held: { type: "integer", minimum: 0, description: "Bytes that have come, from the beginning." },
    isWhole: { type: "boolean" },
  },
  required: ["held", "isWhole"],
};

const head: Json = {
  type: "object",
  description: "The newest kept entry of a device.",
  properties: { device: { type: "string" }, seq: { type: "integer", minimum: 1 }, hash },
  required: ["device", "seq", "hash"],
};

const entry: Json = {
  type: "object",
  description: "A header that never changes, and a body that is null when it is withheld or erased.",
  properties: {
    header: {
      type: "object",
      properties: {
        id: { type: "string", format: "uuid" },
        kind: { type: "string" },
        schema: { type: "integer", minimum: 1 },
        device: { type: "string" },
        seq: { type: "integer", minimum: 1 },
        prev: { anyOf: [hash, { type: "null" }] },
        at: { type: "string" },
        recordedAt: { type: "string", format: "date-time" },
        author: { type: "string" },
        programme: { type: "string" },
        about: { type: "array", items: { type: "string" }, minItems: 1 },
        replaces: { type: "array", items: { type: "string" } },
        content: hash,
      },
      required: "id kind schema device seq prev at recordedAt author programme about replaces content".split(" "),
    },
    body: {
      anyOf: [
        {
          type: "object",
          properties: { salt: { type: "string" }, data: { type: "object" } },
          required: ["salt", "data"],
        },
        { type: "null" },
      ],
    },
  },
  required: ["header", "body"],
};

const pushReply: Json = {
  type: "object",
  properties: {
    heads: { type: "array", items: head, description: "Everything up to these numbers is safe here." },
    refused: {
      type: "array",
      items: {
        type: "object",
        properties: { id: { type: "string" }, problem: { type: "object" } },
        required: ["id", "problem"],
      },
    },
  },
  required: ["heads", "refused"],
};

const page: Json = {
  type: "object",
  properties: {
    entries: { type: "array", items: entry },
    cursor: { type: "integer", description: "Where the next page starts." },
    more: { type: "boolean" },
    scope: {
      type: "string",
      description:
        "For a member: a word that changes with what he or she may see; a device that meets another one begins anew.",
    },
  },
  required: ["entries", "cursor", "more"],
};

const { $schema: _dialect, ...pushShape } = z.toJSONSchema(pushBody, { io: "input" });
const partShape = z.toJSONSchema(partQuery, { io: "output" }) as { readonly properties: Json };
const queryShape = z.toJSONSchema(pullQuery, { io: "output" }) as { readonly properties: Json };

/** The paths of the exchange. */
export const programmePaths: Json = {
  "/api/programmes/{programme}/entries": {
    post: {
      operationId: "push",
      summary:
        "Take entries in. Repeating it changes nothing; each entry that is not taken in is named with its reason. Of a member: from his or her own devices, and what the role may add.",
      parameters: [programme],
      requestBody: {
        required: true,
        content: json({ ...pushShape, properties: { entries: { type: "array", items: entry, maxItems: 5000 } } }),
      },
      responses: {
        "200": { description: "What is kept now, and what was refused.", content: json(pushReply) },
        "401": noSession,
        "404": trouble("The name is none of a programme."),
        "413": trouble("The body is too large: send fewer entries."),
        "422": trouble("The body does not fit."),
        "503": trouble("The records cannot be reached now; nothing was acknowledged. Send it again later."),
      },
    },
    get: {
      operationId: "pull",
      summary:
        "Entries taken in after a cursor, in the order they were taken in. To a member: what the role may see, whole or without body; the cursor moves over the rest.",
      parameters: [
        programme,
        ...Object.entries(queryShape.properties).map(([name, schema]) => ({
          name,
          in: "query",
          required: false,
          schema,
        })),
      ],
      responses: {
        "200": { description: "A page of entries.", content: json(page) },
        "401": noSession,
        "404": trouble("The name is none of a programme."),
        "422": trouble("The query does not fit."),
        "503": trouble("The records cannot be reached now."),
      },
    },
  },
  "/api/programmes/{programme}/forecasts": {
    get: {
      operationId: "forecasts",
      summary:
        "The forecast of the last night for every counted colony of the open cases: derived from the records as they stood then. To a member: those of the cases he or she may read.",
      parameters: [programme],
      responses: {
        "200": { description: "One for each colony of a case; none before the first night.", content: json(forecasts) },
        "401": noSession,
        "404": trouble("The name is none of a programme."),
        "503": trouble("The records cannot be reached now."),
      },
    },
  },
  "/api/programmes/{programme}/apart": {
    get: {
      operationId: "apart",
      summary:
        "Entries that the service keeps apart: they claim a number that another has, or their device was reported lost. Each beside what stands under its number, and with what was decided. Of members for those who may settle them.",
      parameters: [programme],
      responses: {
        "200": { description: "What waits for a person first.", content: json(apartOver(entry, hash)) },
        "401": noSession,
        "403": trouble("The role does not settle what is kept apart."),
        "404": trouble("The name is none of a programme."),
        "503": trouble("The records cannot be reached now."),
      },
    },
  },
  "/api/programmes/{programme}/files/{file}": {
    get: {
      operationId: "readFile",
      summary: "A photo or a voice note, to whoever is given an entry that names it and whose writer has sent it.",
      parameters: [programme, file],
      responses: {
        "200": {
          description: "The file, to be saved and not shown.",
          content: Object.fromEntries(mediaTypes.map((type) => [type, { schema: bytes }])),
        },
        "401": noSession,
        "403": trouble("No entry that the role is given names it."),
        "404": trouble("No entry names it, or its writer has not sent it yet, whether or not another has."),
        "503": trouble("The records cannot be reached now, or the file is damaged."),
      },
    },
  },
  "/api/programmes/{programme}/files/{file}/standing": {
    get: {
      operationId: "fileStanding",
      summary: "How many bytes of a file have come from the asker: where to send on after a cut.",
      parameters: [programme, file],
      responses: {
        "200": { description: "How far it has come.", content: json(standing) },
        "401": noSession,
        "403": trouble("The role may not send it."),
        "404": trouble("No entry of the asker names it."),
      },
    },
  },
  "/api/programmes/{programme}/files/{file}/parts": {
    post: {
      operationId: "sendFilePart",
      summary:
        "Take the next piece of a file in, from the member whose entry names it. Repeating it changes nothing; with the last one the whole is held against its hash.",
      parameters: [
        programme,
        file,
        ...Object.entries(partShape.properties).map(([name, schema]) => ({
          name,
          in: "query",
          required: true,
          schema,
        })),
      ],
      requestBody: { required: true, content: { "application/octet-stream": { schema: bytes } } },
      responses: {
        "200": { description: "How far it has come.", content: json(standing) },
        "401": noSession,
        "403": trouble("The role may not send it."),
        "404": trouble("No entry of the asker names it."),
        "409": trouble("A piece is missing before this one: send on from the byte that is named."),
        "413": trouble("The piece is larger than 1 MiB."),
        "422": trouble("It is not the file that the entry names, of another sort or size, or a photo with tags."),
        "507": trouble("The programme has no room for more files."),
      },
    },
  },
  "/api/programmes/{programme}": {
    delete: {
      operationId: "removeDemonstration",
      summary: "Remove the demonstration. Records of any other programme are never removed this way.",
      parameters: [programme],
      responses: {
        "204": { description: "It is gone." },
        "401": noSession,
        "403": trouble("It is not the demonstration."),
        "404": trouble("The name is none of a programme."),
      },
    },
  },
};
