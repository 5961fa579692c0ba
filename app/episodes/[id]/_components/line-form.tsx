'use client';

import type { FoodHit } from '../../../foods/search/hit';
import { FormFrame, type KeptTyping } from '../../../_forms/form-frame';
import type { FormAction } from '../../../_forms/parse-then-act';
import { Button, ButtonLink } from '../../../_ui/button';
import { AmountField } from '../../../_ui/form/amount-field';
import { ChoiceField, TextField, TickField, type Choice } from '../../../_ui/form/field';
import { FoodChoice } from './food-choice';

/** An ingredient as its form shows it: all as text. */
export interface LineTexts {
  readonly text: string;
  readonly quantity: string;
  readonly unit: string;
  readonly state: string;
  readonly grams: string;
  readonly leftBehind: string;
  readonly note: string;
  readonly asBought: boolean;
  readonly spoiltByTake: boolean;
  /** The food's measure that a piece, cup or spoon is; empty for the first that fits. */
  readonly measureName: string;
  readonly measures: readonly Choice[];
  readonly food: FoodHit | null;
}

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly line: LineTexts;
  readonly units: readonly Choice[];
  readonly states: readonly Choice[];
  readonly submit: string;
  readonly cancelHref?: string;
  /** Left out where the form is for something new. */
  readonly kept?: KeptTyping | null | undefined;
}

const FIELDS = [
  'text',
  'foodId',
  'quantity',
  'unit',
  'state',
  'grams',
  'leftBehind',
  'note',
  'measureName',
];

/** Adds or changes an ingredient. What only some need stands folded away. */
export function LineForm({
  id,
  action,
  hidden,
  line,
  units,
  states,
  submit,
  cancelHref,
  kept,
}: Props) {
  return (
    <FormFrame id={id} action={action} hidden={hidden} fields={FIELDS} kept={kept}>
      {(state) => (
        <div className="grid gap-x-8 gap-y-4 lg:grid-cols-[1.3fr_1fr]">
          <FoodChoice form={id} state={state} text={line.text} chosen={line.food} />
          <div className="grid content-start gap-4">
            <AmountField
              form={id}
              name="quantity"
              label="Amount"
              unitName="unit"
              units={units}
              initial={line.quantity}
              initialUnit={line.unit}
              state={state}
            />
            {line.measures.length > 0 && (
              <>
                <input type="hidden" name="measuresOf" value={line.food?.id ?? ''} />
                <ChoiceField
                  form={id}
                  name="measureName"
                  label="Which measure"
                  hint="What a piece, cup or spoon of this food is. After choosing another food, save and open this again."
                  choices={line.measures}
                  initial={line.measureName}
                  state={state}
                />
              </>
            )}
            <ChoiceField
              form={id}
              name="state"
              label="Weighed"
              choices={states}
              initial={line.state}
              state={state}
            />
            <details open={saysMore(line) || state.problems.length > 0}>
              <summary className="link min-h-11 content-center">
                Grams, peel, what is left behind, a note
              </summary>
              <div className="mt-2 grid gap-4">
                <TextField
                  form={id}
                  name="grams"
                  label="Grams"
                  hint="Where you know better than the measure: 20, 20 ± 7, 13-27."
                  initial={line.grams}
                  state={state}
                />
                <TextField
                  form={id}
                  name="leftBehind"
                  label="Left behind, grams"
                  hint="In the pan, tray or bowl, and not eaten: 3, 3 ± 1, 2-4. Empty for none."
                  initial={line.leftBehind}
                  state={state}
                />
                <TextField form={id} name="note" label="Note" initial={line.note} state={state} />
                <TickField
                  form={id}
                  name="asBought"
                  label="The amount is with peel, shell or ends"
                  initial={line.asBought}
                  state={state}
                />
                <TickField
                  form={id}
                  name="spoiltByTake"
                  label="A second take needs it again"
                  initial={line.spoiltByTake}
                  state={state}
                />
              </div>
            </details>
          </div>
          <div className="flex flex-wrap gap-3 lg:col-span-2">
            <Button tone="go">{submit}</Button>
            {cancelHref && (
              <ButtonLink href={cancelHref} scroll={false}>
                Leave as it was
              </ButtonLink>
            )}
          </div>
        </div>
      )}
    </FormFrame>
  );
}

/** Whether something is set in what stands folded away. */
function saysMore({ grams, leftBehind, note, asBought, spoiltByTake }: LineTexts): boolean {
  return [grams, leftBehind, note].some((text) => text !== '') || asBought || spoiltByTake;
}
