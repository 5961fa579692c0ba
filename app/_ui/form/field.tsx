import type {
  InputHTMLAttributes,
  ReactNode,
  SelectHTMLAttributes,
  TextareaHTMLAttributes,
} from 'react';
import { errorsAt, fieldId, theirsAt, type FormState } from './form-state';

/** What a control needs so that label, hint and error belong to it. Spread it onto the control. */
export interface Wired {
  readonly id: string;
  readonly name: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': true | undefined;
}

export interface FieldProps {
  /** The form's id, which makes the ids of its fields unique on the page. */
  readonly form: string;
  readonly name: string;
  readonly label: string;
  readonly hint?: ReactNode;
  /** What came back from the last attempt: errors by field, and what was typed. */
  readonly state?: FormState | undefined;
  /** Keeps the label for what reads aloud only, where the place says it already. */
  readonly quiet?: boolean;
  /** How a value reads, where that is not the value itself. */
  readonly say?: (value: string) => string;
}

/** Label, hint, error and description wired once, around whatever control is drawn within. */
export function Field({
  form,
  name,
  label,
  hint,
  state,
  quiet = false,
  say = (value) => value,
  children,
}: FieldProps & { readonly children: (wired: Wired) => ReactNode }) {
  const id = fieldId(form, name);
  const errors = errorsAt(state, name);
  const theirs = theirsAt(state, name);
  const described = [
    hint && `${id}-hint`,
    theirs !== null && `${id}-theirs`,
    errors.length > 0 && `${id}-error`,
  ].filter(Boolean);
  const control = children({
    id,
    name,
    'aria-describedby': described.length > 0 ? described.join(' ') : undefined,
    'aria-invalid': errors.length > 0 ? true : undefined,
  });
  return (
    <div className="min-w-0">
      <label htmlFor={id} className={quiet ? 'unseen' : 'mb-1 block font-semibold'}>
        {label}
      </label>
      {hint && (
        <p id={`${id}-hint`} className="mb-1 text-fine text-soft">
          {hint}
        </p>
      )}
      {theirs === null ? (
        control
      ) : (
        <div className="grid items-start gap-x-4 gap-y-1 md:grid-cols-2">
          <div className="min-w-0">{control}</div>
          <p id={`${id}-theirs`} className="border-l-[3px] border-ink pl-3 wrap-anywhere">
            <span className="lettering block text-fine text-soft">saved there now</span>
            {theirs === '' ? 'nothing' : say(theirs)}
          </p>
        </div>
      )}
      {errors.length > 0 && (
        <p id={`${id}-error`} className="mt-1 text-fine font-semibold text-hand">
          {errors.map((error) => error.message).join(' ')}
        </p>
      )}
    </div>
  );
}

/** The look of every control: a field of lighter paper with an edge that can be seen. */
export const CONTROL =
  'min-h-11 w-full border-[1.5px] border-edge bg-raised px-3 py-2 text-ink aria-invalid:border-2 aria-invalid:border-hand';

type Omitted = 'id' | 'name' | 'form' | 'className' | 'defaultValue';

/** One line of text. What was typed in a refused form stands again. */
export function TextField({
  initial = '',
  control = {},
  ...field
}: FieldProps & {
  readonly initial?: string;
  readonly control?: Omit<InputHTMLAttributes<HTMLInputElement>, Omitted>;
}) {
  return (
    <Field {...field}>
      {(wired) => (
        <input
          {...control}
          {...wired}
          className={CONTROL}
          defaultValue={field.state?.typed[field.name] ?? initial}
        />
      )}
    </Field>
  );
}

/** Several lines of text. */
export function AreaField({
  initial = '',
  control = {},
  ...field
}: FieldProps & {
  readonly initial?: string;
  readonly control?: Omit<TextareaHTMLAttributes<HTMLTextAreaElement>, Omitted>;
}) {
  return (
    <Field {...field}>
      {(wired) => (
        <textarea
          rows={4}
          {...control}
          {...wired}
          className={CONTROL}
          defaultValue={field.state?.typed[field.name] ?? initial}
        />
      )}
    </Field>
  );
}

export interface Choice {
  readonly value: string;
  readonly words: string;
}

/** One of a list. */
export function ChoiceField({
  choices,
  initial = '',
  control = {},
  ...field
}: FieldProps & {
  readonly choices: readonly Choice[];
  readonly initial?: string;
  readonly control?: Omit<SelectHTMLAttributes<HTMLSelectElement>, Omitted>;
}) {
  const chosen = field.state?.typed[field.name] ?? initial;
  return (
    <Field
      {...field}
      say={(value) => choices.find((choice) => choice.value === value)?.words ?? value}
    >
      {(wired) => (
        // A new key per answer: a select that is reset by its form shows again what was chosen.
        <select key={chosen} {...control} {...wired} className={CONTROL} defaultValue={chosen}>
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.words}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** A box to tick. Its label stands beside it and is part of what can be hit. */
export function TickField({
  form,
  name,
  label,
  state,
  initial = false,
}: Pick<FieldProps, 'form' | 'name' | 'label' | 'state'> & { readonly initial?: boolean }) {
  const id = fieldId(form, name);
  const given = Object.keys(state?.typed ?? {}).length > 0;
  const ticked = given ? state?.typed[name] === 'on' : initial;
  const theirs = theirsAt(state, name);
  return (
    <label htmlFor={id} className="flex min-h-11 items-center gap-3">
      <input
        key={String(ticked)}
        id={id}
        name={name}
        type="checkbox"
        className="size-5 shrink-0 accent-ink"
        defaultChecked={ticked}
      />
      <span>
        {label}
        {theirs !== null && (
          <span className="block text-fine text-soft">
            Saved there now: {theirs === 'on' ? 'ticked' : 'not ticked'}
          </span>
        )}
      </span>
    </label>
  );
}
