'use client';

import { FormFrame } from '../../_forms/form-frame';
import { Button } from '../../_ui/button';
import { TextField } from '../../_ui/form/field';
import { addYield } from '../yield-actions';
import { SureTick, WEIGHT_FIELDS, WeightFields } from './yield-fields';

interface Props {
  readonly foodId: string;
  readonly methods: readonly string[];
}

/** A raw and a cooked weight of a food, by hand. */
export function YieldForm({ foodId, methods }: Props) {
  const form = 'yield';
  return (
    <FormFrame id={form} action={addYield} fields={[...WEIGHT_FIELDS, 'on']} hidden={{ foodId }}>
      {(state) => (
        <div className="grid gap-4">
          <WeightFields form={form} state={state} methods={methods} />
          <div className="max-w-60">
            <TextField
              form={form}
              state={state}
              name="on"
              label="On"
              hint="Empty for today."
              control={{ type: 'date' }}
            />
          </div>
          <SureTick form={form} state={state} />
          <div>
            <Button>Keep the cooked weight</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
