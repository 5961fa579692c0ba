'use client';

import { useState } from 'react';
import { FormFrame } from '../../../_forms/form-frame';
import type { FormAction } from '../../../_forms/parse-then-act';
import { AmountField } from '../../../_ui/form/amount-field';
import { CONTROL, Field, TextField, TickField } from '../../../_ui/form/field';
import type { FormState } from '../../../_ui/form/form-state';
import type { DishHit } from '../dish-hit';
import { DISH_MASS_UNITS, PORTION_UNIT } from '../dish-units';
import { SaveOrLeave } from './save-or-leave';
import { useDishSearch } from './use-dish-search';

/** An ingredient that is a dish, as its form shows it: all as text. */
export interface DishLineTexts {
  readonly text: string;
  readonly madeFromId: string;
  readonly quantity: string;
  readonly unit: string;
  readonly note: string;
  readonly spoiltByTake: boolean;
}

interface Props {
  readonly id: string;
  readonly episodeId: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly line: DishLineTexts;
  /** Dishes to choose from before anything was looked for; the one that is chosen among them. */
  readonly dishes: readonly DishHit[];
  readonly submit: string;
  readonly cancelHref?: string;
}

const FIELDS = ['madeFromId', 'quantity', 'unit', 'text', 'note'];

/** Adds or changes an ingredient that is itself a dish: which one, and how much of it. */
export function DishLineForm(props: Props) {
  const { id, episodeId, action, hidden } = props;
  return (
    <FormFrame id={id} action={action} hidden={{ episodeId, ...hidden }} fields={FIELDS}>
      {(state) => <Fields {...props} state={state} />}
    </FormFrame>
  );
}

function Fields({
  id,
  episodeId,
  line,
  dishes,
  submit,
  cancelHref,
  state,
}: Props & { readonly state: FormState }) {
  const [words, setWords] = useState('');
  const [chosen, setChosen] = useState(state.typed.madeFromId ?? line.madeFromId);
  const found = useDishSearch(episodeId, words.trim(), dishes);
  // What was chosen stays in the list, whatever is looked for next.
  const known = [...found, ...dishes].find(({ recipeId }) => recipeId === chosen);
  const shown = known && !found.includes(known) ? [known, ...found] : found;
  const field = { form: id, state };
  return (
    <div className="grid max-w-3xl gap-4 md:grid-cols-2 md:gap-x-8">
      <div className="grid content-start gap-3">
        <Field
          {...field}
          name="words"
          label="Look for a dish"
          hint="By words of it or of its episode."
        >
          {(wired) => (
            <input
              {...wired}
              type="search"
              autoComplete="off"
              className={CONTROL}
              value={words}
              onChange={(event) => setWords(event.target.value)}
            />
          )}
        </Field>
        <Field {...field} name="madeFromId" label="Made from">
          {(wired) => (
            <select
              {...wired}
              className={CONTROL}
              value={chosen}
              onChange={(event) => setChosen(event.target.value)}
            >
              <option value="">{shown.length === 0 ? 'nothing fits' : 'choose a dish'}</option>
              {shown.map(({ recipeId, title, note }) => (
                <option key={recipeId} value={recipeId}>
                  {title} ({note})
                </option>
              ))}
            </select>
          )}
        </Field>
      </div>
      <div className="grid content-start gap-4">
        <AmountField
          {...field}
          name="quantity"
          label="Amount"
          hint="Grams are of the finished dish."
          unitName="unit"
          units={unitChoices(known, line.unit)}
          initial={line.quantity}
          initialUnit={line.unit}
        />
        <TextField
          {...field}
          name="text"
          label="Ingredient"
          hint="As you would write it; empty for the dish’s own name."
          initial={line.text}
        />
        <details open={line.note !== '' || line.spoiltByTake}>
          <summary className="link min-h-11 content-center">A note, and what a take needs</summary>
          <div className="mt-2 grid gap-4">
            <TextField {...field} name="note" label="Note" initial={line.note} />
            <TickField
              {...field}
              name="spoiltByTake"
              label="A second take needs it again"
              initial={line.spoiltByTake}
            />
          </div>
        </details>
      </div>
      <SaveOrLeave submit={submit} cancelHref={cancelHref} tone="go" className="md:col-span-2" />
    </div>
  );
}

/** Grams, batches, and the portions of the dish that is chosen, by name. */
function unitChoices(dish: DishHit | undefined, initial: string) {
  const portions = (dish?.portions ?? []).map((name) => `${PORTION_UNIT}${name}`);
  const all = [...DISH_MASS_UNITS, 'batch', ...portions];
  return [...new Set([...all, initial])].map((value) => ({
    value,
    words: value === 'batch' ? 'batch (all of it)' : value.replace(PORTION_UNIT, '× '),
  }));
}
