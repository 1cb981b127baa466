/** What happens once someone is signed in on this device: the device is the member's from here on. */
import { openDeviceStore } from "../../../storage/device.ts";
import { accountWords } from "../../words/index.ts";
import { ask, type Reply } from "./ask.ts";
import { type Standing, standingOf } from "./standing.ts";

type Said = Parameters<typeof standingOf>[0];

/** Sends name and password, or an invitation; ties the session to this device under the name that was typed. */
export async function comeIn(address: string, body: object, deviceName: string): Promise<Reply<Standing>> {
  const unreached = accountWords.signIn.unreached;
  const reply = await ask<Said>("POST", address, unreached, body);
  if (!reply.ok) return reply;
  const standing = standingOf(reply.value);
  const { member } = standing;
  if (!member) return { ok: false, says: [unreached] };
  const store = await openDeviceStore({ programme: member.programme, owner: member.id, author: member.name });
  const device = { device: store.device(), name: deviceName };
  await store.close();
  const tied = await ask("POST", `/api/programmes/${member.programme}/devices`, unreached, device);
  return tied.ok ? { ok: true, value: standing } : tied;
}

/** A name to begin with, by what the device is held like. */
export const usualName = (): string =>
  window.matchMedia("(pointer: coarse)").matches ? accountWords.signIn.phone : accountWords.signIn.computer;
