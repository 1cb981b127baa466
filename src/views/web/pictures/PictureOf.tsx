/** A picture told as data, with its twins, drawn by its kind. */
import { type PictureView, pictureTable } from "../../model/index.ts";
import { methodPage } from "../../words/index.ts";
import { Bars } from "./Bars.tsx";
import { Curves } from "./Curves.tsx";
import { Picture } from "./Picture.tsx";
import { Ranges } from "./Ranges.tsx";

/** Figures of a table to six digits: it is what the picture is checked by. */
const shown = (value: string | number | boolean | null): string =>
  value === null ? "" : typeof value === "number" ? String(Number(value.toPrecision(6))) : String(value);

export function PictureOf({ picture }: { readonly picture: PictureView }) {
  return (
    <Picture
      title={picture.title}
      under={picture.under}
      table={pictureTable(picture, methodPage.pictureColumns)}
      show={shown}
    >
      <Drawn picture={picture} />
    </Picture>
  );
}

function Drawn({ picture }: { readonly picture: PictureView }) {
  switch (picture.kind) {
    case "ranges":
      return <Ranges picture={picture} />;
    case "curves":
      return <Curves picture={picture} />;
    case "bars":
      return <Bars picture={picture} />;
  }
}
