/** Fields of a form: label above, hint under it, trouble under the field with what is expected. */
import { createContext, type FormEvent, type ReactNode, useContext, useId, useRef, useState } from "react";
import type { Problem, Result } from "../../../units/index.ts";
import type { Fields } from "../../model/index.ts";
import { sentenceOf } from "../../words/index.ts";
import { words } from "../words.ts";

interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly needed?: boolean;
  readonly problems: readonly Problem[];
  readonly wide?: boolean;
  readonly children: (input: FieldInput) => ReactNode;
}

/** What the input of a field must carry. */
export interface FieldInput {
  readonly id: string;
  readonly name: string;
  readonly "aria-describedby": string | undefined;
  readonly "aria-invalid": true | undefined;
  readonly "aria-required": true | undefined;
}

/** The sentence of a problem. */
export const sentence = (problem: Problem): string => sentenceOf(problem, words);

/** How the fields within say their trouble: in the common words, unless a page brings more. */
export const Saying = createContext(sentence);

export function Field({ name, label, hint, needed, problems, wide, children }: FieldProps) {
  const id = useId();
  const say = useContext(Saying);
  const own = problems.filter((trouble) => trouble.field === name);
  const described = [hint ? `${id}-hint` : "", own.length > 0 ? `${id}-trouble` : ""].filter(Boolean).join(" ");
  return (
    <div className={wide ? "field wide" : "field"} data-trouble={own.length > 0 || undefined}>
      <label htmlFor={id}>
        {label}
        {needed ? <span className="needed"> {words.shell.needed}</span> : null}
      </label>
      {hint ? (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      {children({
        id,
        name,
        "aria-describedby": described || undefined,
        "aria-invalid": own.length > 0 || undefined,
        "aria-required": needed || undefined,
      })}
      {own.map((trouble) => (
        <p key={trouble.code} className="trouble" id={`${id}-trouble`}>
          {say(trouble)}
        </p>
      ))}
    </div>
  );
}

/** A line of text, a number or a day. */
export function TextField(
  props: Omit<FieldProps, "children"> & {
    readonly type?: "text" | "date";
    readonly numeric?: boolean;
    readonly value?: string | undefined;
    readonly unit?: string;
    readonly onType?: (typed: string) => void;
    readonly list?: readonly string[];
    /** What the browser may fill in; nothing when left out. */
    readonly fill?: "username";
  },
) {
  const { type = "text", numeric, value, unit, onType, list, fill = "off", ...field } = props;
  return (
    <Field {...field}>
      {(input) => (
        <span className="with-unit">
          <input
            {...input}
            type={type}
            inputMode={numeric ? "decimal" : undefined}
            className={numeric ? "number" : undefined}
            autoComplete={fill}
            list={list && list.length > 0 ? `${input.id}-list` : undefined}
            {...(onType
              ? { value: value ?? "", onChange: (event) => onType(event.target.value) }
              : { defaultValue: value })}
          />
          {unit ? <span className="unit">{unit}</span> : null}
          {list && list.length > 0 ? (
            <datalist id={`${input.id}-list`}>
              {list.map((each) => (
                <option key={each} value={each} />
              ))}
            </datalist>
          ) : null}
        </span>
      )}
    </Field>
  );
}

/** Several lines. */
export function LongField(
  props: Omit<FieldProps, "children"> & { readonly rows?: number; readonly value?: string | undefined },
) {
  const { rows = 3, value, ...field } = props;
  return <Field {...field}>{(input) => <textarea {...input} rows={rows} defaultValue={value} />}</Field>;
}

export interface Choice {
  readonly value: string;
  readonly says: string;
}

/** One of a few. */
export function ChoiceField(
  props: Omit<FieldProps, "children"> & {
    readonly choices: readonly Choice[];
    readonly value?: string | undefined;
    readonly onChoose?: (value: string) => void;
  },
) {
  const { choices, value, onChoose, ...field } = props;
  return (
    <Field {...field}>
      {(input) => (
        <select
          {...input}
          {...(onChoose ? { value, onChange: (event) => onChoose(event.target.value) } : { defaultValue: value })}
        >
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.says}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** The text fields of a form, by name. */
export const fieldsOf = (form: HTMLFormElement): Fields =>
  Object.fromEntries([...new FormData(form)].filter((pair): pair is [string, string] => typeof pair[1] === "string"));

/**
 * Reads a form when it is sent: problems are shown and the first field with one takes the focus; a value goes on.
 * The form keeps what was typed until the value was taken, and beyond where taking answers `stays`.
 */
export function useForm<Value>(read: (fields: Fields) => Result<Value>, take: (value: Value) => unknown) {
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  // A press that comes while the first is being taken is the same press: a second one would lead elsewhere.
  const isTaken = useRef(false);
  const onSubmit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    if (isTaken.current) return;
    const form = event.currentTarget;
    const result = read(fieldsOf(form));
    setProblems(result.ok ? [] : result.problems);
    if (result.ok) {
      isTaken.current = true;
      void Promise.resolve(take(result.value))
        .then((taken) => {
          if (taken !== "stays") form.reset();
        })
        .finally(() => {
          isTaken.current = false;
        });
      return;
    }
    const first = result.problems.find((trouble) => trouble.field && form.elements.namedItem(trouble.field));
    const field = first?.field ? form.elements.namedItem(first.field) : null;
    if (field instanceof HTMLElement) field.focus();
  };
  return { problems, onSubmit };
}
