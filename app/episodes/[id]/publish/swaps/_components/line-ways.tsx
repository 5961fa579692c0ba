'use client';

import { ButtonForm } from '../../../../../_forms/button-form';
import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import { AmountField } from '../../../../../_ui/form/amount-field';
import { FoodPick } from '../../../../../foods/search/food-pick';
import type { FoodHit } from '../../../../../foods/search/hit';
import { tryOtherAmount, tryOtherFood, tryWith, tryWithout } from '../actions';

interface Place {
  /** Episode, dish, saved swap and steps, as every form here sends them. */
  readonly hidden: Readonly<Record<string, string>>;
  readonly offered: readonly FoodHit[];
}

interface LineProps extends Place {
  readonly lineId: string;
  readonly text: string;
  /** What one of it is called where it is counted; null where it is weighed. */
  readonly counted: string | null;
}

/** What can be tried with an ingredient: another food, another amount, none of it. */
export function LineWays({ hidden, offered, lineId, text, counted }: LineProps) {
  const own = { ...hidden, lineId };
  const units = [
    ...(counted === null ? [] : [{ value: 'one', words: counted }]),
    { value: 'g', words: 'g' },
  ];
  return (
    <div className="grid gap-x-10 gap-y-6 border-l-[3px] border-ink py-2 pl-4 md:grid-cols-2">
      <FormFrame id="swap-food" action={tryOtherFood} hidden={own} fields={['foodId']}>
        {(state, pending) => (
          <div className="grid gap-3">
            <FoodPick
              form="swap-food"
              state={state}
              name="foodId"
              label={`Another food in place of ${text}`}
              listLabel="The other food"
              offered={offered}
            />
            <div>
              <Button size="small" aria-disabled={pending || undefined}>
                Try it
              </Button>
            </div>
          </div>
        )}
      </FormFrame>
      <div className="grid content-start gap-5">
        <FormFrame
          id="swap-amount"
          action={tryOtherAmount}
          hidden={own}
          fields={['amount', 'unit']}
        >
          {(state, pending) => (
            <div className="grid gap-3">
              <AmountField
                form="swap-amount"
                state={state}
                name="amount"
                label="Another amount"
                unitName="unit"
                units={units}
              />
              <div>
                <Button size="small" aria-disabled={pending || undefined}>
                  Try this amount
                </Button>
              </div>
            </div>
          )}
        </FormFrame>
        <ButtonForm action={tryWithout} values={own} tone="hand" label={`Leave out ${text}`}>
          Leave it out
        </ButtonForm>
      </div>
    </div>
  );
}

/** Another food beside all that the dish has. */
export function AddWay({ hidden }: Pick<Place, 'hidden'>) {
  return (
    <FormFrame id="swap-add" action={tryWith} hidden={hidden} fields={['foodId', 'amount']}>
      {(state, pending) => (
        <div className="grid max-w-md gap-3 border-l-[3px] border-ink py-2 pl-4">
          <FoodPick
            form="swap-add"
            state={state}
            name="foodId"
            label="A food to add"
            listLabel="The food that is added"
          />
          <AmountField
            form="swap-add"
            state={state}
            name="amount"
            label="How much of it"
            unitName="unit"
            units={[{ value: 'g', words: 'g' }]}
          />
          <div>
            <Button size="small" aria-disabled={pending || undefined}>
              Try it
            </Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
