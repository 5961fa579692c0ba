'use client';

import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import { AmountField } from '../../../../../_ui/form/amount-field';
import { ChoiceField, type Choice } from '../../../../../_ui/form/field';
import { readOtherwise } from '../actions';

interface Props {
  readonly hidden: Readonly<Record<string, string>>;
  readonly number: string;
  readonly nutrient: string;
  readonly of: string;
  readonly nutrients: readonly Choice[];
  readonly parts: readonly Choice[];
}

/** What the comment was read as, to be put right. */
export function ReadingForm({ hidden, number, nutrient, of, nutrients, parts }: Props) {
  return (
    <FormFrame
      id="reading"
      action={readOtherwise}
      hidden={hidden}
      fields={['number', 'nutrient', 'of']}
    >
      {(state, pending) => (
        <div className="grid items-end gap-4 md:grid-cols-[1fr_1fr_auto]">
          <AmountField
            form="reading"
            state={state}
            name="number"
            label="Their number"
            unitName="nutrient"
            units={nutrients}
            initial={number}
            initialUnit={nutrient}
          />
          <ChoiceField
            form="reading"
            state={state}
            name="of"
            label="Of what"
            choices={parts}
            initial={of}
          />
          <Button aria-disabled={pending || undefined}>Look again</Button>
        </div>
      )}
    </FormFrame>
  );
}
