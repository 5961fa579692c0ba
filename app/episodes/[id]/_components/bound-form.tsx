'use client';

import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { CONTROL, Field } from '../../../_ui/form/field';
import { countAsRange } from '../bound-actions';

interface Props {
  /** Unique on the page. */
  readonly id: string;
  readonly values: Readonly<Record<string, string | number>>;
  readonly unit: string;
  /** What is counted, of which ingredient. */
  readonly what: string;
  readonly maxPer100: number;
}

/** The most in 100 g that a missing value is counted up to, where the person knows better than the offer. */
export function BoundForm({ id, values, unit, what, maxPer100 }: Props) {
  return (
    <FormFrame id={id} action={countAsRange} fields={['maxPer100']} hidden={values}>
      {(state) => (
        <Field
          form={id}
          name="maxPer100"
          label={`At most in 100 g, ${unit}`}
          hint={`From 0 to this in 100 g. ${what}`}
          state={state}
        >
          {(wired) => (
            <span className="flex items-center gap-3">
              <input
                {...wired}
                className={`${CONTROL} max-w-32`}
                inputMode="decimal"
                autoComplete="off"
                defaultValue={state.typed.maxPer100 ?? String(maxPer100)}
              />
              <Button size="small" aria-label={`Count up to this: ${what}`}>
                Count up to this
              </Button>
            </span>
          )}
        </Field>
      )}
    </FormFrame>
  );
}
