'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { ChoiceField, TextField, type Choice } from '../../../../_ui/form/field';
import { FormEnd } from './form-end';
import { PIN_CHOICES } from '#lib/shoot/pins';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly pin: { readonly stepId: string; readonly when: string; readonly at: string };
  /** Steps of the segment. */
  readonly steps: readonly Choice[];
  readonly submit: string;
  readonly cancelHref: string;
}

/** A step that is tied to a clock time. */
export function PinForm({ id, action, hidden, pin, steps, submit, cancelHref }: Props) {
  return (
    <FormFrame id={id} action={action} fields={['stepId', 'when', 'at']} hidden={hidden}>
      {(state, pending) => {
        const common = { form: id, state };
        return (
          <div className="grid gap-4">
            <div className="grid items-end gap-4 md:grid-cols-[3fr_2fr_2fr]">
              <ChoiceField
                {...common}
                name="stepId"
                label="This step"
                choices={steps}
                initial={pin.stepId}
              />
              <ChoiceField
                {...common}
                name="when"
                label="Starts"
                choices={PIN_CHOICES}
                initial={pin.when}
              />
              <TextField
                {...common}
                name="at"
                label="Clock time"
                hint="As 9:30; after midnight as 24:30."
                initial={pin.at}
                control={{ autoComplete: 'off' }}
              />
            </div>
            <FormEnd submit={submit} cancelHref={cancelHref} pending={pending} />
          </div>
        );
      }}
    </FormFrame>
  );
}
