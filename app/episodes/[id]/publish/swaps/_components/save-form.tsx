'use client';

import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import { TextField } from '../../../../../_ui/form/field';
import { saveSwap } from '../actions';

interface Props {
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly name: string;
  readonly again: boolean;
}

/** Keeps what is tried out under a name. */
export function SaveForm({ hidden, name, again }: Props) {
  return (
    <FormFrame id="save-swap" action={saveSwap} hidden={hidden} fields={['name']}>
      {(state, pending) => (
        <div className="grid max-w-md gap-3">
          <TextField
            form="save-swap"
            state={state}
            name="name"
            label="Save it as"
            hint="As you would call it: the full-fat one, no dairy. Swaps of several dishes under one name, such as bigger day, are told together for the day."
            initial={name}
            control={{ maxLength: 120, autoComplete: 'off' }}
          />
          <div>
            <Button tone="go" aria-disabled={pending || undefined}>
              {again ? 'Save the change' : 'Save the swap'}
            </Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
