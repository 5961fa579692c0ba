'use client';

import Link from 'next/link';
import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { Button } from '../../../../_ui/button';
import { ChoiceField, TextField, type Choice } from '../../../../_ui/form/field';

export interface LinkText {
  readonly fromStepId: string;
  readonly fromAnchor: string;
  readonly toStepId: string;
  readonly toAnchor: string;
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
const ANCHORS: readonly Choice[] = [
  { value: 'start', words: 'its start' },
  { value: 'end', words: 'its end' },
];

/** What ties one step to another: not before, at least and at most so many minutes after. */
export function LinkForm({ id, action, hidden, link, steps, submit, cancelHref }: Props) {
  return (
    <FormFrame id={id} action={action} fields={FIELDS} hidden={hidden}>
      {(state, pending) => {
        const common = { form: id, state };
        return (
          <div className="grid gap-4">
            <div className="grid grid-cols-[1fr_7.5rem] items-end gap-4 md:grid-cols-[3fr_1fr_3fr_1fr]">
              <ChoiceField
                {...common}
                name="fromStepId"
                label="First"
                choices={steps}
                initial={link.fromStepId}
              />
              <ChoiceField
                {...common}
                name="fromAnchor"
                label="counted from"
                choices={ANCHORS}
                initial={link.fromAnchor}
              />
              <ChoiceField
                {...common}
                name="toStepId"
                label="Then"
                choices={steps}
                initial={link.toStepId}
              />
              <ChoiceField
                {...common}
                name="toAnchor"
                label="counted to"
                choices={ANCHORS}
                initial={link.toAnchor}
              />
            </div>
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
            <p className="flex flex-wrap items-center gap-3">
              <Button tone="go" aria-disabled={pending || undefined}>
                {submit}
              </Button>
              <Link href={cancelHref} className="link inline-flex min-h-14 items-center px-2">
                Leave as it was
              </Link>
            </p>
          </div>
        );
      }}
    </FormFrame>
  );
}
