'use client';

import { FormFrame } from '../../../_forms/form-frame';
import type { FormAction } from '../../../_forms/parse-then-act';
import { AmountField } from '../../../_ui/form/amount-field';
import { ChoiceField, type Choice } from '../../../_ui/form/field';
import { SaveOrLeave } from './save-or-leave';

/** A target as its form shows it: all as text. */
export interface TargetTexts {
  readonly nutrient: string;
  readonly relation: string;
  readonly amount: string;
  /** Empty for all dishes; a dish, or a dish and one of its portions. */
  readonly segmentId: string;
}

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly target: TargetTexts;
  /** Each with its unit, which is the amount's. */
  readonly nutrients: readonly Choice[];
  readonly scopes: readonly Choice[];
  readonly submit: string;
  readonly cancelHref?: string;
}

const FIELDS = ['relation', 'amount', 'nutrient', 'segmentId'];
const RELATIONS = [
  { value: 'atLeast', words: 'at least' },
  { value: 'atMost', words: 'at most' },
  { value: 'about', words: 'about' },
];

/** What the day, one dish or one portion is to reach, not to pass, or to be about. */
export function TargetForm(props: Props) {
  const { id, action, hidden, target, nutrients, scopes, submit, cancelHref } = props;
  return (
    <FormFrame id={id} action={action} hidden={hidden} fields={FIELDS}>
      {(state, pending) => {
        const common = { form: id, state };
        return (
          <div className="grid max-w-2xl gap-4">
            <div className="grid items-end gap-4 md:grid-cols-[1fr_2fr]">
              <ChoiceField
                {...common}
                name="relation"
                label="Keep to"
                choices={RELATIONS}
                initial={target.relation}
              />
              <AmountField
                {...common}
                name="amount"
                label="How much"
                unitName="nutrient"
                units={nutrients}
                initial={target.amount}
                initialUnit={target.nutrient}
              />
            </div>
            <ChoiceField
              {...common}
              name="segmentId"
              label="In"
              choices={scopes}
              initial={target.segmentId}
            />
            <SaveOrLeave submit={submit} cancelHref={cancelHref} pending={pending} />
          </div>
        );
      }}
    </FormFrame>
  );
}
