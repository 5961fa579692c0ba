'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { AreaField, TextField } from '../../../../_ui/form/field';
import { makeCorrection } from '../actions';

const FORM = 'correction';

interface Props {
  readonly episodeId: string;
  readonly lockId: string;
  readonly inputsSha256: string;
  readonly reason: string;
  /** Local date, `YYYY-MM-DD`. */
  readonly today: string;
}

/** Why the number is another one now, and the day from which it is said. */
export function CorrectionForm({ episodeId, lockId, inputsSha256, reason, today }: Props) {
  return (
    <FormFrame
      id={FORM}
      action={makeCorrection}
      fields={['reason', 'on']}
      hidden={{ episodeId, lockId, inputsSha256 }}
    >
      {(state, pending) => (
        <div className="grid gap-4">
          <AreaField
            form={FORM}
            name="reason"
            label="Why it is another number now"
            hint="Viewers read this. It begins with what changed here; say it as you would say it to them."
            state={state}
            initial={reason}
            control={{ rows: 4 }}
          />
          <div className="max-w-56">
            <TextField
              form={FORM}
              name="on"
              label="Corrected on"
              state={state}
              initial={today}
              control={{ type: 'date' }}
            />
          </div>
          <div>
            <Button tone="go" aria-disabled={pending || undefined}>
              Make the correction
            </Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
