import { CONTROL, Field, type FieldProps } from '../../../_ui/form/field';

/** Grams off a scale: the keys of a phone have digits only, and under wet hands it is 56 px high. */
export function ScaleField({
  large = false,
  initial = '',
  ...field
}: FieldProps & { readonly large?: boolean; readonly initial?: string }) {
  return (
    <Field {...field}>
      {(wired) => (
        <input
          {...wired}
          // Where the form opens, this is what is typed first.
          data-first={large || undefined}
          className={`${CONTROL} max-md:min-h-14 ${large ? 'text-step' : ''}`}
          inputMode="decimal"
          autoComplete="off"
          defaultValue={field.state?.typed[field.name] ?? initial}
        />
      )}
    </Field>
  );
}

/** What can be hit beside a box or a ring: all of it, 56 px high on a phone. */
export const HIT = 'flex min-h-11 items-center gap-3 max-md:min-h-14';
