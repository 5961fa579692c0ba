'use client';

import { useState } from 'react';
import { CONTROL, Field } from '../../_ui/form/field';
import type { FormState } from '../../_ui/form/form-state';
import type { FoodHit } from './hit';
import { useFoodSearch } from './use-food-search';

interface Props {
  readonly form: string;
  readonly state: FormState;
  /** The field that sends the food's id. */
  readonly name: string;
  /** What stands over the words that are looked for. */
  readonly label: string;
  /** Names the list for what reads aloud. */
  readonly listLabel: string;
  /** Foods to choose from before anything is typed. */
  readonly offered?: readonly FoodHit[];
}

/** A food looked for by its name: words above, the foods that fit in a list below, best first. */
export function FoodPick({ form, state, name, label, listLabel, offered = [] }: Props) {
  const [words, setWords] = useState('');
  const found = useFoodSearch(words.trim());
  const hits = words.trim() === '' ? offered : found;
  return (
    <div className="grid gap-2">
      <Field form={form} name="words" label={label} state={state}>
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
      <Field form={form} name={name} label={listLabel} state={state} quiet>
        {(wired) => (
          <select {...wired} className={CONTROL} defaultValue={state.typed[name]}>
            {hits.length === 0 && <option value="">type its name above</option>}
            {hits.map((hit) => (
              <option key={hit.id} value={hit.id}>
                {hit.name}
              </option>
            ))}
          </select>
        )}
      </Field>
    </div>
  );
}
