import { describe, expect, it } from "vitest";
import { attachedDraft, fileStory, photo, voice } from "../../tests/journals/file-story.ts";
import { writer } from "../../tests/journals/writer.ts";
import { DomainError } from "../units/index.ts";
import { fileNamedBy, largestFile } from "./attached-file.ts";
import { isFreeOfTags, mediaTypeOf, withoutTags } from "./file-bytes.ts";

const bytesOf = (...parts: readonly (string | readonly number[] | Uint8Array)[]): Uint8Array =>
  Uint8Array.from(
    parts.flatMap((part) => (typeof part === "string" ? [...part].map((each) => each.charCodeAt(0)) : [...part])),
  );
const segment = (marker: number, content: string): Uint8Array =>
  bytesOf([0xff, marker, (content.length + 2) >> 8, (content.length + 2) & 0xff], content);

const place = "GPS 46.654321";
/** The photo with everything a camera and a program write beside the picture. */
const tagged = bytesOf(
  photo.slice(0, 2),
  segment(0xe1, `Exif\0\0${place}`),
  segment(0xe1, `http://ns.adobe.com/xap/1.0/\0${place}`),
  segment(0xed, `Photoshop 3.0\0${place}`),
  segment(0xe2, `MPF\0${place}`),
  segment(0xe0, `JFXX\0${place}`),
  segment(0xfe, `somebody, ${place}`),
  photo.slice(2),
  `behind the end: ${place}`,
);

describe("files that entries name", () => {
  it("[JN28] fits its kind by hash, size and sort, or not at all", () => {
    const write = (more: object) => () => writer().write(attachedDraft(photo, "image/jpeg", more));
    expect(write({})).not.toThrow();
    expect(write({ bytes: largestFile })).not.toThrow();
    expect(write({ bytes: largestFile + 1 })).toThrow(DomainError);
    expect(write({ bytes: 0 })).toThrow(DomainError);
    expect(write({ sha256: "A".repeat(64) })).toThrow(DomainError);
    expect(write({ mediaType: "image/svg+xml" })).toThrow(DomainError);
    expect(fileStory().flatMap((entry) => fileNamedBy(entry)?.bytes ?? [])).toEqual([photo.length, 3000, 1500]);
    expect(fileStory().flatMap((entry) => fileNamedBy({ ...entry, body: null }) ?? [])).toEqual([]);
  });

  it.each([
    ["a photo", photo, "image/jpeg"],
    ["sound in a WebM", voice, "audio/webm"],
    ["sound in an Ogg", bytesOf("OggS", [0, 2]), "audio/ogg"],
    ["sound in an MP4", bytesOf([0, 0, 0, 24], "ftypmp42"), "audio/mp4"],
    ["a drawing that can hold a script", bytesOf("<svg xmlns='http://www.w3.org/2000/svg'>"), null],
    ["a page", bytesOf("<!doctype html><script>"), null],
    ["a picture of another sort", bytesOf([0x89], "PNG\r\n"), null],
    ["a program", bytesOf("MZ"), null],
    ["nothing", bytesOf(), null],
  ] as const)("[JN29] tells %s by its first bytes", (_, bytes, sort) => {
    expect(mediaTypeOf(bytes)).toBe(sort);
  });

  it("[JN30] takes every tag out of a picture and leaves the picture as it was", () => {
    expect(isFreeOfTags(photo)).toBe(true);
    expect(withoutTags(photo)).toEqual(photo);
    expect(isFreeOfTags(tagged)).toBe(false);
    expect(withoutTags(tagged)).toEqual(photo);
  });

  it("[JN30] keeps what the picture needs: colour profile and transform", () => {
    const needed = bytesOf(
      photo.slice(0, 2),
      segment(0xe2, "ICC_PROFILE\0\x01\x01of a screen"),
      segment(0xee, "Adobe\0d\0\0\0\0\x01"),
      photo.slice(2),
    );
    expect(withoutTags(needed)).toEqual(needed);
  });

  it("[JN30] has no form without tags for what is cut off anywhere, or is no picture", () => {
    for (let length = 0; length < photo.length; length += 1)
      expect(withoutTags(photo.slice(0, length)), String(length)).toBeNull();
    expect(withoutTags(voice)).toBeNull();
    expect(withoutTags(bytesOf(photo.slice(0, 2), "no marker", photo.slice(2)))).toBeNull();
  });
});
