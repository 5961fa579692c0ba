'use client';

import { FormFrame } from '../../../../../_forms/form-frame';
import type { FormAction } from '../../../../../_forms/parse-then-act';
import { Button } from '../../../../../_ui/button';
import { ChoiceField, TextField, type Choice } from '../../../../../_ui/form/field';
import { StatusLine } from '../../../../../_ui/status-line';

interface Props {
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string>>;
  readonly rates: readonly Choice[];
  readonly initial: Readonly<Record<'clock' | 'timecode' | 'rate', string>>;
}

const PLAIN = { autoComplete: 'off', spellCheck: false } as const;

/** One picture of the phone's clock: what the clock shows, and the camera's timecode of that picture. */
export function ClockForm({ action, hidden, rates, initial }: Props) {
  const id = 'camera-clock';
  return (
    <FormFrame id={id} action={action} fields={['clock', 'timecode', 'rate']} hidden={hidden}>
      {(state, pending) => {
        const common = { form: id, state };
        return (
          <div className="grid gap-4">
            <div className="grid items-end gap-4 md:grid-cols-3">
              <TextField
                {...common}
                name="clock"
                label="The clock shows"
                hint="As 14:03:27."
                initial={initial.clock}
                control={PLAIN}
              />
              <TextField
                {...common}
                name="timecode"
                label="Timecode of the picture"
                hint="As 10:02:33:14."
                initial={initial.timecode}
                control={PLAIN}
              />
              <ChoiceField
                {...common}
                name="rate"
                label="Frames a second"
                choices={rates}
                initial={initial.rate}
              />
            </div>
            <p>
              <Button tone="go" aria-disabled={pending || undefined}>
                Give the takes their timecodes
              </Button>
            </p>
            <StatusLine>{state.done}</StatusLine>
          </div>
        );
      }}
    </FormFrame>
  );
}
