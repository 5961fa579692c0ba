'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { TextField } from '../../../../_ui/form/field';
import { keepSpeakingRate } from './speaking-actions';

interface Props {
  readonly episodeId: string;
  readonly initial: string;
}

const ID = 'speaking-rate';

/** The person's own speaking rate, typed. */
export function SpeakingRateForm({ episodeId, initial }: Props) {
  return (
    <FormFrame id={ID} action={keepSpeakingRate} hidden={{ episodeId }} fields={['perMinute']}>
      {(state, pending) => (
        <div className="flex max-w-md flex-wrap items-end gap-3">
          <div className="flex-1">
            <TextField
              form={ID}
              name="perMinute"
              label="Words a minute"
              hint="Between 40 and 400."
              state={state}
              initial={initial}
              control={{ inputMode: 'numeric', autoComplete: 'off' }}
            />
          </div>
          <Button tone="go" aria-disabled={pending || undefined}>
            Keep it
          </Button>
        </div>
      )}
    </FormFrame>
  );
}
