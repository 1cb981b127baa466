/** A printable paper: a title, its style, and its body as HTML. */

export interface Paper {
  readonly title: string;
  /** The `@page` rules: size, margins, what stands in them. They hold for a whole document, never for a part of one. */
  readonly pageCss: string;
  /** The style of the body. It reaches no further when it is put on a shadow root. */
  readonly css: string;
  /** Without inline styles, so that a strict content policy lets it through. */
  readonly body: string;
}
