/** A printable paper: a title, its style, and its body as HTML. */
import type { Html } from "./html.ts";

/** Draws the 2-D code of a text; `loadCodes` brings one. */
export type DrawCode = (text: string) => Html;

/** How a sheet is drawn: the code and, where there is a choice, the page. */
export interface Drawing {
  readonly drawCode: DrawCode;
  /** A4 when left out. */
  readonly page?: "A4" | "Letter";
}

export interface Paper {
  readonly title: string;
  /** The `@page` rules: size, margins, what stands in them. They hold for a whole document, never for a part of one. */
  readonly pageCss: string;
  /** The style of the body. It reaches no further when it is put on a shadow root. */
  readonly css: string;
  /** Without inline styles, so that a strict content policy lets it through. */
  readonly body: string;
}
