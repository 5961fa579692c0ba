'use client';

import { FormFrame } from '../_forms/form-frame';
import { Button } from '../_ui/button';
import { TextField } from '../_ui/form/field';
import { bringIn } from '../actions';

const FORM = 'bring-in';

/** Brings in an episode file, with the foods, kitchen and stock that it needs, or all of an episode as one zip. */
export function BringInForm() {
  return (
    <FormFrame id={FORM} action={bringIn} fields={['file']}>
      {(state) => (
        <div className="grid gap-4">
          <TextField
            form={FORM}
            name="file"
            label="Episode file"
            hint="As “Episode file” or “All as one zip” of an episode saves it. It becomes a new episode."
            state={state}
            control={{ type: 'file', accept: 'application/json,.json,application/zip,.zip' }}
          />
          <div>
            <Button>Bring it in</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
