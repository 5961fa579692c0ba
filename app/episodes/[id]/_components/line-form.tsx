'use client';

import type { FoodHit } from '../../../foods/search/hit';
import { FormFrame, type KeptTyping } from '../../../_forms/form-frame';
import type { FormAction } from '../../../_forms/parse-then-act';
import { AmountField } from '../../../_ui/form/amount-field';
import { ChoiceField, TextField, TickField, type Choice } from '../../../_ui/form/field';
import { FoodChoice } from './food-choice';
import type { LineAbout } from './line-about';
import { CookedBy, Retention } from './line-cooking-fields';
import { LineLeftFields } from './line-left-fields';
import { SaveOrLeave } from './save-or-leave';

/** An ingredient as its form shows it: all as text. */
export interface LineTexts {
  readonly text: string;
  readonly quantity: string;
  readonly unit: string;
  readonly state: string;
  readonly grams: string;
  readonly leftBehind: string;
  readonly leftWeighed: boolean;
  readonly leftWhere: string;
  readonly leftMade: string;
  readonly note: string;
  readonly shopNote: string;
  readonly asBought: boolean;
  readonly spoiltByTake: boolean;
  /** The food's measure that a piece, cup or spoon is; empty for the first that fits. */
  readonly measureName: string;
  /** By which of the food's yields; empty for its own, else the first. */
  readonly cookMethod: string;
  /** Code of what cooking leaves of vitamins and minerals; empty for none. */
  readonly retention: string;
  readonly food: FoodHit | null;
}

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly line: LineTexts;
  /** What is known of its food; left out for a new ingredient. */
  readonly about?: LineAbout;
  readonly units: readonly Choice[];
  readonly states: readonly Choice[];
  readonly submit: string;
  readonly cancelHref?: string;
  /** Other words to look for a food by from the start. */
  readonly look?: string;
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
  'leftWhere',
  'leftMade',
  'note',
  'shopNote',
  'measureName',
  'cookMethod',
  'retention',
];

/** Adds or changes an ingredient. What only some need stands folded away. */
export function LineForm({
  id,
  action,
  hidden,
  line,
  about,
  units,
  states,
  submit,
  cancelHref,
  look = '',
  kept,
}: Props) {
  return (
    <FormFrame id={id} action={action} hidden={hidden} fields={FIELDS} kept={kept}>
      {(state) => (
        <div className="grid gap-x-8 gap-y-4 lg:grid-cols-[1.3fr_1fr]">
          <FoodChoice form={id} state={state} text={line.text} chosen={line.food} look={look} />
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
            {about && <input type="hidden" name="measuresOf" value={about.foodId} />}
            {about && about.measures.length > 0 && (
              <ChoiceField
                form={id}
                name="measureName"
                label="Which measure"
                hint="What a piece, cup or spoon of this food is. After choosing another food, save and open this again."
                choices={about.measures}
                initial={line.measureName}
                state={state}
              />
            )}
            <ChoiceField
              form={id}
              name="state"
              label="Weighed"
              choices={states}
              initial={line.state}
              state={state}
            />
            {about && (
              <CookedBy
                form={id}
                state={state}
                methods={about.methods}
                method={line.cookMethod}
                words={about.cooked}
              />
            )}
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
                <div>
                  <TickField
                    form={id}
                    name="asBought"
                    label="The amount is with peel, shell, bone or ends"
                    initial={line.asBought}
                    state={state}
                  />
                  {about && <p className="text-fine text-soft">{about.refuse}</p>}
                </div>
                <LineLeftFields
                  form={id}
                  state={state}
                  grams={line.leftBehind}
                  weighed={line.leftWeighed}
                  where={line.leftWhere}
                  made={line.leftMade}
                />
                <TextField form={id} name="note" label="Note" initial={line.note} state={state} />
                <TextField
                  form={id}
                  name="shopNote"
                  label="For the shop"
                  hint="On the shopping list only: for the hero shot, the nice one."
                  initial={line.shopNote}
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
            {about && (
              <Retention
                form={id}
                state={state}
                choices={about.retentions}
                code={line.retention}
                source={about.retentionSource}
              />
            )}
          </div>
          <SaveOrLeave
            submit={submit}
            cancelHref={cancelHref}
            tone="go"
            className="lg:col-span-2"
          />
        </div>
      )}
    </FormFrame>
  );
}

/** Whether something is set in what stands folded away. */
function saysMore(line: LineTexts): boolean {
  const { grams, leftBehind, note, shopNote, asBought, spoiltByTake, leftWeighed } = line;
  const typed = [grams, leftBehind, note, shopNote].some((text) => text !== '');
  return typed || asBought || spoiltByTake || leftWeighed;
}
