'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { ChoiceField, type Choice } from '../../../../_ui/form/field';
import type { Span } from '#lib/shoot/step-words';
import { FormEnd } from './form-end';

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
const ANCHORS: readonly Choice[] = [
  { value: 'start', words: 'its start' },
  { value: 'end', words: 'its end' },
];

/** When a lot stands out: from one step's start or end to another's. */
export function SpanForm({ id, action, hidden, span, steps, submit, cancelHref }: Props) {
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
                label="Comes out with"
                choices={steps}
                initial={span.fromStepId}
              />
              <ChoiceField
                {...common}
                name="fromAnchor"
                label="counted from"
                choices={ANCHORS}
                initial={span.fromAnchor}
              />
              <ChoiceField
                {...common}
                name="toStepId"
                label="Cold, hot or eaten with"
                choices={steps}
                initial={span.toStepId}
              />
              <ChoiceField
                {...common}
                name="toAnchor"
                label="counted to"
                choices={ANCHORS}
                initial={span.toAnchor}
              />
            </div>
            <FormEnd submit={submit} cancelHref={cancelHref} pending={pending} />
          </div>
        );
      }}
    </FormFrame>
  );
}
