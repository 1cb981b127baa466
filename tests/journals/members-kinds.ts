/** How members came into an invented programme, as its service wrote it down. */
import type { Entry } from "../../src/journal/index.ts";
import { writer } from "./writer.ts";

export const membersStory = (programme = "main"): readonly Entry[] =>
  writer({ device: "service", programme, author: "member-1", from: "2026-04-02T08:00:00.000Z" }).write(
    {
      kind: "access-noted",
      at: "2026-04-02",
      about: [programme],
      data: { act: "member-admitted", by: null, member: "member-1", role: "administrator" },
    },
    {
      kind: "access-noted",
      at: "2026-04-02",
      about: [programme],
      data: { act: "invited", by: "member-1", role: "keeper" },
    },
    {
      kind: "access-noted",
      at: "2026-04-03",
      about: [programme],
      data: { act: "device-lost", by: "member-1", member: "member-2", device: "phone-2" },
    },
  );
