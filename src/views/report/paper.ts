/** A printable paper: a title, its style, and its body as HTML. */

export interface Paper {
  readonly title: string;
  readonly css: string;
  readonly body: string;
}
