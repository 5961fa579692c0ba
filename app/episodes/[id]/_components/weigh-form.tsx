'use client';

import { FormFrame } from '../../../_forms/form-frame';
import type { FormAction } from '../../../_forms/parse-then-act';
import { Button, ButtonLink } from '../../../_ui/button';
import { ChoiceField, TextField, type Choice } from '../../../_ui/form/field';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly scales: readonly Choice[];
  readonly submit: string;
  readonly cancelHref?: string;
}

const FIELDS = ['gross', 'tare', 'scaleId', 'method'];
const METHODS = [
  { value: 'direct', words: 'direct: one reading, less the container' },
  { value: 'difference', words: 'by difference: before it was taken, less after' },
];

/** What a scale shows, less its container. The time is taken when it is sent. */
export function WeighForm({ id, action, hidden, scales, submit, cancelHref }: Props) {
  return (
    <FormFrame id={id} action={action} hidden={hidden} fields={FIELDS}>
      {(state, pending) => {
        const common = { form: id, state };
        const control = { inputMode: 'decimal', autoComplete: 'off' } as const;
        return (
          <div className="grid max-w-xl gap-4">
            <div className="grid items-end gap-4 md:grid-cols-2">
              <TextField
                {...common}
                name="gross"
                label="On the scale, g"
                hint="By difference: before it was taken."
                control={control}
              />
              <TextField
                {...common}
                name="tare"
                label="Container, g"
                hint="Empty for none. By difference: after."
                control={control}
              />
            </div>
            <ChoiceField
              {...common}
              name="scaleId"
              label="Scale"
              choices={scales}
              initial={scales[0]?.value ?? ''}
            />
            <ChoiceField {...common} name="method" label="How" choices={METHODS} initial="direct" />
            <div className="flex flex-wrap gap-3">
              <Button tone="go" aria-disabled={pending || undefined}>
                {submit}
              </Button>
              {cancelHref && (
                <ButtonLink href={cancelHref} scroll={false}>
                  Close
                </ButtonLink>
              )}
            </div>
          </div>
        );
      }}
    </FormFrame>
  );
}
