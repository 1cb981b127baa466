/** A chosen picture, made smaller and drawn anew on this device, so that nothing but the picture leaves it. */
import { largestFile, mediaTypeOf, withoutTags } from "../../../journal/index.ts";
import { type DeviceFile, fileHash } from "../../../storage/device.ts";

/** Longest side in pixels. Enough to see how a wing stands; a choice of ours. */
export const longestSide = 2048;
/** Of the JPEG that is written, 0 to 1. A choice of ours. */
const quality = 0.85;

export type Prepared =
  | { readonly ok: true; readonly file: DeviceFile }
  | { readonly ok: false; readonly why: "photo-unreadable" | "photo-too-large" };

/**
 * The photo as it is kept: its longest side at most 2048 pixels, a JPEG without tags. Where this device cannot draw it
 * anew, a JPEG is kept as it is without its tags, and anything else is refused.
 */
export async function preparePhoto(chosen: Blob): Promise<Prepared> {
  const drawn = drawsTruly() ? await drawnAnew(chosen) : null;
  const given = drawn ?? new Uint8Array(await chosen.arrayBuffer());
  const bytes = mediaTypeOf(given) === "image/jpeg" ? withoutTags(given) : null;
  if (bytes === null) return { ok: false, why: "photo-unreadable" };
  if (bytes.length > largestFile) return { ok: false, why: "photo-too-large" };
  return { ok: true, file: { sha256: await fileHash(bytes), mediaType: "image/jpeg", bytes } };
}

/** Null when this device cannot read the picture. */
async function drawnAnew(chosen: Blob): Promise<Uint8Array<ArrayBuffer> | null> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(chosen, { imageOrientation: "from-image" });
  } catch {
    return null;
  }
  const scale = Math.min(1, longestSide / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const pen = canvas.getContext("2d");
  if (pen === null) return null;
  pen.fillStyle = "#fff"; // what is seen through becomes white, not black
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.imageSmoothingQuality = "high";
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", quality));
  canvas.width = 0; // gives the memory back at once on phones that are slow to
  return blob === null ? null : new Uint8Array(await blob.arrayBuffer());
}

/** Some browsers answer with noise when a page reads what it drew, so that nobody is told by it: a photo would be lost. */
function drawsTruly(): boolean {
  const canvas = document.createElement("canvas");
  canvas.width = 8;
  canvas.height = 8;
  const pen = canvas.getContext("2d", { willReadFrequently: true });
  if (pen === null) return false;
  pen.fillStyle = "#2864a0";
  pen.fillRect(0, 0, 8, 8);
  const { data } = pen.getImageData(0, 0, 8, 8);
  return data.every((value, index) => value === [0x28, 0x64, 0xa0, 0xff][index % 4]);
}
