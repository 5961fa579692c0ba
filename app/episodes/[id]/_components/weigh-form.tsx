'use client';

import { FormFrame } from '../../../_forms/form-frame';
import type { FormAction } from '../../../_forms/parse-then-act';
import { Button } from '../../../_ui/button';
import { ChoiceField, TextField, type Choice } from '../../../_ui/form/field';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string>>;
  readonly scales: readonly Choice[];
  /** What was weighed so far and what a new reading does to it; empty for nothing. */
  readonly soFar: string;
}

const FIELDS = ['gross', 'tare', 'scaleId', 'method'];
const METHODS: readonly Choice[] = [
  { value: 'direct', words: 'put on the scale' },
  { value: 'difference', words: 'the difference of before and after' },
];
const DECIMAL = { inputMode: 'decimal' } as const;

/** Writes one reading of a scale down. Readings are added, never overwritten. */
export function WeighForm({ id, action, hidden, scales, soFar }: Props) {
  return (
    <FormFrame id={id} action={action} hidden={hidden} fields={FIELDS}>
      {(state) => (
        <div className="grid gap-4 sm:grid-cols-2">
          {soFar !== '' && <p className="text-fine sm:col-span-2">{soFar}</p>}
          <TextField
            form={id}
            name="gross"
            label="Grams on the scale"
            control={DECIMAL}
            state={state}
          />
          <TextField
            form={id}
            name="tare"
            label="Container, grams"
            hint="Empty where the scale was set to zero with it."
            control={DECIMAL}
            state={state}
          />
          <ChoiceField form={id} name="scaleId" label="Scale" choices={scales} state={state} />
          <ChoiceField form={id} name="method" label="How" choices={METHODS} state={state} />
          <p className="sm:col-span-2">
            <Button tone="go">Write it down</Button>
          </p>
        </div>
      )}
    </FormFrame>
  );
}
