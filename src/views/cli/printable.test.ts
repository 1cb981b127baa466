import { expect, it } from "vitest";
import { printable } from "./printable.ts";

it("[CB56] words of a device nobody vouches for steer no terminal and begin no line of their own", () => {
  expect(printable("hive\u001b[2J\u009b1m\r\n\u202eend, déjà – 3 °C")).toBe(
    "hive\ufffd[2J\ufffd1m\ufffd\ufffd\ufffdend, déjà – 3 °C",
  );
});
