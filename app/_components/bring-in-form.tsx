'use client';

import { FormFrame } from '../_forms/form-frame';
import { Button } from '../_ui/button';
import { TextField } from '../_ui/form/field';
import { bringIn } from '../actions';

const FORM = 'bring-in';

/** Brings in an episode file, with the foods, kitchen and stock that it needs. */
export function BringInForm() {
  return (
    <FormFrame id={FORM} action={bringIn} fields={['file']}>
      {(state) => (
        <div className="grid gap-4">
          <TextField
            form={FORM}
            name="file"
            label="Episode file"
            hint="As the button “Episode file” of an episode saves it. It becomes a new episode."
            state={state}
            control={{ type: 'file', accept: 'application/json,.json' }}
          />
          <div>
            <Button>Bring it in</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
