/** The part of the OpenAPI document about members: made from the same table of routes that is served. */
import * as z from "zod";
import { type MemberRoute, underProgramme } from "./member-route.ts";
import { memberRoutes } from "./member-routes.ts";
import * as shape from "./member-shapes.ts";
import { answerBody, options, questionBody } from "./passkeys.ts";
import { acceptBody, lookAnswer, lookBody, signInBody } from "./session-routes.ts";

type Json = Readonly<Record<string, unknown>>;

const shapeOf = (schema: z.ZodType, io: "input" | "output"): Json => {
  const { $schema: _dialect, ...rest } = z.toJSONSchema(schema, { io });
  return rest;
};
const json = (schema: Json): Json => ({ "application/json": { schema } });
const given = (schema: z.ZodType): Json => ({ required: true, content: json(shapeOf(schema, "input")) });
const answer = (description: string, schema: z.ZodType): Json => ({
  description,
  content: json(shapeOf(schema, "output")),
});
const trouble = (description: string): Json => ({
  description,
  content: json({ $ref: "#/components/schemas/Problems" }),
});

const noSession = trouble("Nobody is signed in.");
const unfit = trouble("What was sent does not fit: each problem names field, given and expected.");
const tooOften = trouble("Too often from one address, or a wrong password too often: it says when to try again.");

/** `/members/:member` as the document writes it, and the parameters in it. */
const addressOf = (path: string): string => path.replaceAll(/:(\w+)/g, "{$1}");
const parametersIn = (path: string): readonly Json[] =>
  [...path.matchAll(/:(\w+)/g)].map(([, name]) => ({ name, in: "path", required: true, schema: { type: "string" } }));

function operation(route: MemberRoute): Json {
  const query = route.query ? (shapeOf(route.query, "input").properties as Json) : {};
  return {
    operationId: route.operationId,
    summary: route.summary,
    description: `Asks for a session and for the right to ${route.act}.`,
    parameters: [
      ...parametersIn(`${underProgramme}${route.path}`),
      ...Object.entries(query).map(([name, schema]) => ({ name, in: "query", required: false, schema })),
    ],
    ...(route.body ? { requestBody: given(route.body) } : {}),
    responses: {
      ...(route.answer ? { "200": answer("Done.", route.answer) } : { "204": { description: "Done." } }),
      "401": noSession,
      "403": trouble("The role does not include it, or it is of another programme."),
      "404": trouble("There is no such thing."),
      "409": trouble("It stands in the way of something that is there."),
      "422": unfit,
    },
  };
}

function byAddress(): Json {
  const paths: Record<string, Record<string, Json>> = {};
  for (const route of memberRoutes) {
    const address = addressOf(`${underProgramme}${route.path}`);
    paths[address] = { ...paths[address], [route.method.toLowerCase()]: operation(route) };
  }
  return paths;
}

/** The paths of members and sessions. */
export const memberPaths: Json = {
  "/api/session": {
    get: {
      operationId: "whoIsSignedIn",
      summary: "Who is signed in, and whether signing in is asked for.",
      responses: { "200": answer("How it stands.", shape.standing) },
    },
    post: {
      operationId: "signIn",
      summary: "Begin a session. Its token comes in a cookie that no script can read.",
      requestBody: given(signInBody),
      responses: {
        "200": answer("Signed in.", shape.standing),
        "403": trouble("Name and password do not go together."),
        "422": unfit,
        "429": tooOften,
      },
    },
    delete: {
      operationId: "signOut",
      summary: "End this session.",
      responses: { "204": { description: "It has ended." } },
    },
  },
  "/api/session/passkey-question": {
    post: {
      operationId: "passkeySignInQuestion",
      summary: "The question that a passkey answers to sign in.",
      requestBody: given(questionBody),
      responses: {
        "200": answer("The question, as WebAuthn spells it.", options),
        "409": trouble("Passkeys need a name: on its own machine the service must be met as localhost."),
        "422": unfit,
        "429": tooOften,
      },
    },
  },
  "/api/session/passkey": {
    post: {
      operationId: "signInByPasskey",
      summary: "Begin a session by the answer of a passkey.",
      requestBody: given(answerBody),
      responses: {
        "200": answer("Signed in.", shape.standing),
        "403": trouble("The passkey was not accepted."),
        "422": unfit,
        "429": tooOften,
      },
    },
  },
  "/api/invitation": {
    post: {
      operationId: "lookAtInvitation",
      summary: "What an invitation is for, while it can still be used.",
      requestBody: given(lookBody),
      responses: {
        "200": answer("It can be used.", lookAnswer),
        "404": trouble("It was used or cancelled, has run out, or never was."),
        "422": unfit,
        "429": tooOften,
      },
    },
  },
  "/api/invitation/acceptance": {
    post: {
      operationId: "acceptInvitation",
      summary: "Become a member by an invitation, and sign in.",
      requestBody: given(acceptBody),
      responses: {
        "200": answer("A member, and signed in.", shape.standing),
        "404": trouble("It was used or cancelled, has run out, or never was."),
        "409": trouble("The name is taken."),
        "422": unfit,
        "429": tooOften,
      },
    },
  },
  ...byAddress(),
};
