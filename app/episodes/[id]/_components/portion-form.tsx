'use client';

import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { AmountField } from '../../../_ui/form/amount-field';
import { TextField } from '../../../_ui/form/field';
import { addPortion } from '../actions';

interface Props {
  readonly episodeId: string;
  readonly recipeId: string;
}

const KINDS = [
  { value: 'count', words: 'equal portions' },
  { value: 'mass', words: 'g each' },
];

/** Says into how many portions a dish goes, or how heavy one is. */
export function PortionForm({ episodeId, recipeId }: Props) {
  const form = `portion-${recipeId}`;
  return (
    <FormFrame
      id={form}
      action={addPortion}
      hidden={{ episodeId, recipeId }}
      fields={['size', 'kind', 'name']}
    >
      {(state) => (
        <div className="grid max-w-xl gap-4">
          <AmountField
            form={form}
            name="size"
            label="Portions"
            unitName="kind"
            units={KINDS}
            state={state}
          />
          <TextField
            form={form}
            name="name"
            label="Said as"
            hint="As “one of two” or “a bowl”. Empty for the plain words."
            state={state}
          />
          <div>
            <Button>Add the portion</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
