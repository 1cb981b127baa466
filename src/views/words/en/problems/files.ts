/** What the service says of photos and voice notes that it does not take or give: no page says these itself. */
import type { Slots } from "./index.ts";

const gibibytes = (bytes: unknown): number => Math.round(Number(bytes) / 1024 ** 3);

export const fileProblems = {
  "file-unnamed": () => "No entry here names such a file. It was not taken in.",
  "file-not-here": () => "The file has not been sent yet from the device that holds it.",
  "file-size-unfit": () => "The file has another size than its entry names. It was not taken in.",
  "file-gap": (slots: Slots) => `A piece of the file is missing before this one. Send on from byte ${slots.held}.`,
  "file-sort-unfit": () =>
    "The file is no photo and no voice note, or of another sort than its entry names. It was thrown away.",
  "file-hash-wrong": () => "What was sent is not the file that its entry names. It was thrown away; send it again.",
  "file-tagged": () =>
    "The photo holds more than the picture, such as where it was taken. It was thrown away; take these tags out first.",
  "files-full": (slots: Slots) =>
    `The photos and voice notes of this programme fill the ${gibibytes(slots.bytes)} GiB it may have. This one stays on its device.`,
};
