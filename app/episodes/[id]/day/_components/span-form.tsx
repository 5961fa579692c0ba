'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import type { Choice } from '../../../../_ui/form/field';
import type { Span } from '#lib/shoot/step-words';
import { FormEnd } from './form-end';
import { StepEnds } from './step-ends';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly span: Span;
  /** Every step of the episode. */
  readonly steps: readonly Choice[];
  readonly submit: string;
  readonly cancelHref: string;
}

const FIELDS = ['fromStepId', 'fromAnchor', 'toStepId', 'toAnchor'];

/** When a lot stands out: from one step's start or end to another's. */
export function SpanForm({ id, action, hidden, span, steps, submit, cancelHref }: Props) {
  return (
    <FormFrame id={id} action={action} fields={FIELDS} hidden={hidden}>
      {(state, pending) => (
        <div className="grid gap-4">
          <StepEnds
            form={id}
            state={state}
            ends={span}
            steps={steps}
            from="Comes out with"
            to="Cold, hot or eaten with"
          />
          <FormEnd submit={submit} cancelHref={cancelHref} pending={pending} />
        </div>
      )}
    </FormFrame>
  );
}
