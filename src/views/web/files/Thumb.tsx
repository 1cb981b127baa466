/** A small picture of a photo: drawn once at its small size, so that a long list fits the memory of a phone. */
import { useEffect, useRef, useState } from "react";
import type { DeviceFile } from "../../../storage/device.ts";
import { fileWords } from "../../words/index.ts";

/** Longest side in pixels of the device. */
const side = 240;

export function Thumb({ file, says }: { readonly file: DeviceFile; readonly says: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [isBroken, setBroken] = useState(false);
  useEffect(() => {
    let isWanted = true;
    const draw = async () => {
      const whole = await createImageBitmap(new Blob([file.bytes], { type: file.mediaType }));
      const scale = side / Math.max(whole.width, whole.height);
      const pen = canvas.current?.getContext("2d");
      if (isWanted && pen) {
        pen.canvas.width = Math.max(1, Math.round(whole.width * scale));
        pen.canvas.height = Math.max(1, Math.round(whole.height * scale));
        pen.imageSmoothingQuality = "high";
        pen.drawImage(whole, 0, 0, pen.canvas.width, pen.canvas.height);
      }
      whole.close();
    };
    draw().catch(() => isWanted && setBroken(true));
    return () => {
      isWanted = false;
    };
  }, [file]);
  return isBroken ? (
    <span className="note q2">{fileWords.damaged}</span>
  ) : (
    <canvas ref={canvas} className="thumb" role="img" aria-label={says} width={side} height={side} />
  );
}
