'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { ChoiceField, TextField, type Choice } from '../../../../_ui/form/field';
import { FormEnd } from './form-end';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly pin: { readonly stepId: string; readonly notBefore: string };
  /** Steps of the segment. */
  readonly steps: readonly Choice[];
  readonly submit: string;
  readonly cancelHref: string;
}

/** A step that must not start before a clock time. */
export function PinForm({ id, action, hidden, pin, steps, submit, cancelHref }: Props) {
  return (
    <FormFrame id={id} action={action} fields={['stepId', 'notBefore']} hidden={hidden}>
      {(state, pending) => {
        const common = { form: id, state };
        return (
          <div className="grid gap-4">
            <div className="grid items-end gap-4 md:grid-cols-[3fr_2fr]">
              <ChoiceField
                {...common}
                name="stepId"
                label="This step"
                choices={steps}
                initial={pin.stepId}
              />
              <TextField
                {...common}
                name="notBefore"
                label="Not before"
                hint="As 9:30; after midnight as 24:30."
                initial={pin.notBefore}
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
