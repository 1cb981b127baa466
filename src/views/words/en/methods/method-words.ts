/** What every method of the reckoner says: its question, its fields, its answer. */

export interface FieldWords {
  readonly label: string;
  readonly hint?: string;
  /** People type so many in 100 where the question takes a share. */
  readonly per?: 100;
  /** Members of its lines that people type so many in 100. */
  readonly perOf?: Readonly<Record<string, 100>>;
  /** What the choices of a field are called; the others keep their name. */
  readonly choices?: Readonly<Record<string, string>>;
}

export interface MethodWords<Answer> {
  /** Its question, as a person asks it. */
  readonly asks: string;
  /** When it is asked, or when it is not. */
  readonly under: string;
  /** The fields of its form in their order; a field without words is not on the page. */
  readonly fields: Readonly<Record<string, FieldWords>>;
  /** The answer in a sentence or two; what weighs stands between two pairs of asterisks. */
  readonly says: (answer: Answer) => string;
}
