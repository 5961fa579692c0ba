'use client';

import { FormFrame } from '../../_forms/form-frame';
import { Button } from '../../_ui/button';
import { Failure } from '../../_ui/failure';
import { TextField } from '../../_ui/form/field';
import { tryForm } from '../actions';

const SAMPLE = new Error('The database did not answer within 5 s.');

/** The failure as a page shows it; trying again leads nowhere here. */
export function ShownFailure() {
  return <Failure error={SAMPLE} retry={() => undefined} what="This page could not be shown" />;
}

/** A form that can be sent: empty it is refused, with words it is accepted. */
export function TriedForm({ id }: { readonly id: string }) {
  return (
    <FormFrame id={id} action={tryForm} fields={['words']}>
      {(state, pending) => (
        <div className="grid gap-4">
          <TextField form={id} name="words" label="Words" state={state} />
          <div>
            <Button tone="go" aria-disabled={pending || undefined}>
              Send
            </Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
