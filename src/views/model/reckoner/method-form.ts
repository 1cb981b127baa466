/**
 * The form of a method, made from the schema of its question: fields with their words, and what was typed as the question.
 *
 * @module views/model
 */
import type { Shape } from "../../../reasoning/index.ts";
import { answered, blocked, type Problem, problem, type Result } from "../../../units/index.ts";
import type { FieldWords } from "../../words/index.ts";
import { type Fields, parseNumber } from "../form.ts";

type FieldKind = "number" | "choice" | "switch" | "numbers" | "rows" | "grid" | "text";

export interface MethodField {
  /** Place in the question: `positive`, `belief.a`. */
  readonly name: string;
  readonly kind: FieldKind;
  readonly label: string;
  readonly hint: string | undefined;
  readonly needed: boolean;
  /** What stands in the field at first. */
  readonly typed: string;
  /** What is taken when it is left empty; empty where nothing is. */
  readonly usual: string;
  readonly choices: readonly { readonly value: string; readonly says: string }[];
}

type FormWords = Readonly<Record<string, FieldWords>>;

interface Place {
  readonly name: string;
  readonly shape: Shape;
  readonly needed: boolean;
}

/** Every field of the question that has words, in the order of the words; `start` is the question at first. */
export function methodFields(shape: Shape, words: FormWords, start: object): readonly MethodField[] {
  const places = new Map(placesOf(shape).map((each) => [each.name, each]));
  return Object.entries(words).flatMap(([name, say]): MethodField[] => {
    const place = places.get(name);
    if (!place) return [];
    const kind = kindOf(place.shape);
    const choices = choicesOf(place.shape).map((value) => ({ value, says: say.choices?.[value] ?? value }));
    return [
      {
        name,
        kind,
        label: say.label,
        hint: say.hint,
        needed: place.needed,
        typed: typedOf(valueAt(start, name) ?? place.shape.default, place.shape, say),
        usual: typedOf(place.shape.default, place.shape, say),
        choices:
          kind === "choice" && !place.needed && place.shape.default === undefined ? [nothing, ...choices] : choices,
      },
    ];
  });
}

const nothing = { value: "", says: "–" } as const;

/** The places of a question, objects inside it opened once. */
export function placesOf(shape: Shape): readonly Place[] {
  const required = shape.required ?? [];
  return Object.entries(shape.properties ?? {}).flatMap(([name, each]): Place[] => {
    if (each.properties === undefined) return [{ name, shape: each, needed: required.includes(name) }];
    return placesOf(each).map((inner) => ({
      ...inner,
      name: `${name}.${inner.name}`,
      needed: inner.needed && required.includes(name),
    }));
  });
}

function kindOf(shape: Shape): FieldKind {
  if (choicesOf(shape).length > 0) return "choice";
  if (shape.type === "boolean") return "switch";
  if (shape.type === "array") {
    if (shape.items?.type === "array") return "grid";
    return shape.items?.type === "object" ? "rows" : "numbers";
  }
  return shape.type === "string" ? "text" : "number";
}

const choicesOf = (shape: Shape): readonly string[] => (shape.type === "array" ? [] : (shape.enum ?? []).map(String));

/** Members of the objects of a list, in the order in which a line is typed. */
const membersOf = (shape: Shape): readonly string[] => Object.keys(shape.items?.properties ?? {});

function typedOf(value: unknown, shape: Shape, { per = 1, perOf = {} }: Scale): string {
  if (value === undefined || value === null) return "";
  const number = (each: unknown) => scaled(each ?? "", per);
  switch (kindOf(shape)) {
    case "switch":
      return value === true ? "on" : "";
    case "numbers":
      return (value as readonly unknown[]).map(number).join(", ");
    case "rows":
      return (value as readonly Readonly<Record<string, unknown>>[])
        .map((row) =>
          membersOf(shape)
            .map((member) => scaled(row[member] ?? "", perOf[member] ?? 1))
            .join(" ")
            .trim(),
        )
        .join("\n");
    case "grid":
      return (value as readonly (readonly unknown[])[]).map((row) => row.map(number).join(" ")).join("\n");
    default:
      return number(value);
  }
}

/** A number times its scale, without the noise of floating point; anything else as it is. */
const scaled = (value: unknown, per: number): string =>
  typeof value === "number" ? String(Number((per * value).toPrecision(12))) : String(value);

/** The question that was typed, or a problem for each field that cannot be read. Empty fields are left out. */
export function questionOf(fields: Fields, shape: Shape, words: FormWords): Result<Readonly<Record<string, unknown>>> {
  const problems: Problem[] = [];
  const question: Record<string, unknown> = {};
  for (const { name, shape: here } of placesOf(shape)) {
    const say = words[name];
    if (!say) continue;
    const read = readField((fields[name] ?? "").trim(), here, say);
    if (read === undefined) continue;
    if ("given" in read) {
      const { given } = read;
      const code = isTwofold(given) || isDottedThousands(given) ? "number-in-two-ways" : "field-not-number";
      problems.push(problem(code, "blocked", name, { given, slots: { given } }));
    } else put(question, name, read.value);
  }
  return problems.length > 0 ? blocked(...problems) : answered(question);
}

/** People type so many in 100, or the number itself. */
interface Scale {
  readonly per?: 1 | 100;
  readonly perOf?: Readonly<Record<string, 100>>;
}

type Read = { readonly value: unknown } | { readonly given: string } | undefined;

function readField(typed: string, shape: Shape, say: FieldWords): Read {
  const kind = kindOf(shape);
  if (kind === "switch") return { value: typed !== "" };
  if (typed === "") return undefined;
  switch (kind) {
    case "choice":
      return { value: (shape.enum ?? []).find((each) => String(each) === typed) ?? typed };
    case "text":
      return { value: typed };
    case "number":
      return isWhole(shape) && isDottedThousands(typed) ? { given: typed } : readNumber(typed, say);
    case "numbers":
      return shape.items?.type === "string"
        ? { value: wordsIn(typed, true) }
        : readNumbers(
            wordsIn(typed, isWhole(shape.items)),
            { ...say, areWhole: isWhole(shape.items) },
            (numbers) => numbers,
          );
    case "grid":
      return readLines(typed, { ...say, areWhole: isWhole(shape.items?.items) }, (numbers) => numbers);
    case "rows":
      return readLines(typed, { areWhole: Object.values(shape.items?.properties ?? {}).every(isWhole) }, (numbers) =>
        Object.fromEntries(
          numbers.map((number, index) => {
            const member = membersOf(shape)[index] ?? `column ${index + 1}`;
            return [member, number / (say.perOf?.[member] ?? 1)];
          }),
        ),
      );
  }
}

/** `1,000`: a thousand to some, one to others. */
const isThousands = (text: string): boolean => /^[+\-−]?[1-9]\d{0,2}(,\d{3})+$/.test(text);

/** `1.000` in a whole number: a thousand to some, one to others. */
const isDottedThousands = (text: string): boolean => /^[+\-−]?[1-9]\d{0,2}(\.\d{3})+$/.test(text);

/** A thousand or one, two numbers or one with a decimal comma: who typed it must say. */
const isTwofold = (text: string): boolean => isThousands(text) || /^[+\-−]?\d+,\d+$/.test(text);

const isWhole = (shape: Shape | undefined): boolean => shape?.type === "integer";

/**
 * Numbers or words between blanks, tabs, semicolons or commas; `of` and `in` between numbers are only said. A comma
 * without a blank parts whole numbers, and several of them part any; one alone could be a decimal sign and is left for
 * the number to be refused, as are commas that may part thousands.
 */
const wordsIn = (text: string, areWhole: boolean): readonly string[] =>
  text
    .replaceAll(/(\d)\/(?=\d)/g, areWhole ? "$1 " : "$1/")
    .split(/[\s;]+|,(?=\s|$)/)
    .flatMap((each) => (!isThousands(each) && (areWhole || /,.*,/.test(each)) ? each.split(",") : [each]))
    .flatMap((each) => (/^(|of|in|and|:)$/i.test(each) ? [] : [each]));

/** The numbers of a list: one that can be read in two ways is refused, as is what is none. */
function readNumbers(
  texts: readonly string[],
  { per = 1, areWhole = false }: Scale & { readonly areWhole?: boolean },
  of: (numbers: readonly number[]) => unknown,
): Read {
  const numbers = texts.map((text) =>
    isTwofold(text) || (areWhole && isDottedThousands(text)) ? null : parseNumber(text),
  );
  const bad = numbers.indexOf(null);
  if (bad >= 0) return { given: texts[bad] ?? "" };
  return { value: of(numbers.map((number) => (number ?? 0) / per)) };
}

/** A field of one number takes a decimal comma. */
function readNumber(typed: string, { per = 1 }: Scale): Read {
  const number = isThousands(typed) ? null : parseNumber(typed);
  return number === null ? { given: typed } : { value: number / per };
}

function readLines(
  typed: string,
  say: Scale & { readonly areWhole: boolean },
  of: (numbers: readonly number[]) => unknown,
): Read {
  const lines = typed.split(/\r?\n/).filter((line) => line.trim() !== "");
  const values: unknown[] = [];
  for (const line of lines) {
    const read = readNumbers(wordsIn(line, say.areWhole), say, of);
    if (read === undefined || "given" in read) return read;
    values.push(read.value);
  }
  return { value: values };
}

function put(question: Record<string, unknown>, name: string, value: unknown): void {
  const [first = "", ...rest] = name.split(".");
  if (rest.length === 0) question[first] = value;
  else {
    const inner = (question[first] ?? {}) as Record<string, unknown>;
    question[first] = inner;
    put(inner, rest.join("."), value);
  }
}

function valueAt(of: object, name: string): unknown {
  return name
    .split(".")
    .reduce<unknown>(
      (here, key) => (typeof here === "object" && here !== null ? (here as Record<string, unknown>)[key] : undefined),
      of,
    );
}

/** The field of the form that a problem is about: `colonies[3].positive` belongs to `colonies`. Null for none. */
export function fieldOfProblem({ field }: Pick<Problem, "field">, fields: readonly MethodField[]): string | null {
  if (field === null) return null;
  const names = fields.map(({ name }) => name).sort((a, b) => b.length - a.length);
  return names.find((name) => field === name || field.startsWith(`${name}.`) || field.startsWith(`${name}[`)) ?? null;
}

/**
 * The same question at the command line.
 * @example
 * commandLine("sample-size", { designPrevalence: 0.05 })  // → "echo '{\"designPrevalence\":0.05}' | npm run -s skepsis -- sample-size --input -"
 */
export const commandLine = (verb: string, question: object): string =>
  `echo '${JSON.stringify(question)}' | npm run -s skepsis -- ${verb} --input -`;
