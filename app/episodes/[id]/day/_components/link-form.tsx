'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { TextField, type Choice } from '../../../../_ui/form/field';
import { FormEnd } from './form-end';
import { StepEnds, type StepEndsText } from './step-ends';

export interface LinkText extends StepEndsText {
  readonly minLag: string;
  readonly maxLag: string;
  readonly reason: string;
}

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly link: LinkText;
  /** Every step of the episode. */
  readonly steps: readonly Choice[];
  readonly submit: string;
  readonly cancelHref: string;
}

const FIELDS = ['fromStepId', 'fromAnchor', 'toStepId', 'toAnchor', 'minLag', 'maxLag', 'reason'];

/** What ties one step to another: not before, at least and at most so many minutes after. */
export function LinkForm({ id, action, hidden, link, steps, submit, cancelHref }: Props) {
  return (
    <FormFrame id={id} action={action} fields={FIELDS} hidden={hidden}>
      {(state, pending) => {
        const common = { form: id, state };
        return (
          <div className="grid gap-4">
            <StepEnds {...common} ends={link} steps={steps} from="First" to="Then" />
            <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-[1fr_1fr_2fr]">
              <TextField
                {...common}
                name="minLag"
                label="At least, minutes"
                initial={link.minLag}
                control={{ inputMode: 'decimal', autoComplete: 'off' }}
              />
              <TextField
                {...common}
                name="maxLag"
                label="At most, minutes"
                initial={link.maxLag}
                control={{ inputMode: 'decimal', autoComplete: 'off' }}
              />
              <div className="max-md:col-span-2">
                <TextField {...common} name="reason" label="Because" initial={link.reason} />
              </div>
            </div>
            <FormEnd submit={submit} cancelHref={cancelHref} pending={pending} />
          </div>
        );
      }}
    </FormFrame>
  );
}
