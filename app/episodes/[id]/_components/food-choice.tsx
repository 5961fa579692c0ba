'use client';

import { useState } from 'react';
import type { FoodHit } from '../../../foods/search/hit';
import { useFoodSearch } from '../../../foods/search/use-food-search';
import { CONTROL, Field } from '../../../_ui/form/field';
import type { FormState } from '../../../_ui/form/form-state';

interface Props {
  readonly form: string;
  readonly state: FormState;
  readonly text: string;
  /** The food that the ingredient stands for now, or null. */
  readonly chosen: FoodHit | null;
  /** Other words to look by from the start; empty for none. */
  readonly look?: string;
}

/**
 * The ingredient's words, and under them the foods that they may mean, best first. None is taken unasked: a
 * near match is a wrong number. A food that was chosen stays until another is.
 */
export function FoodChoice({ form, state, text, chosen, look = '' }: Props) {
  const [words, setWords] = useState(state.typed.text ?? text);
  const [other, setOther] = useState(look);
  const [picked, setPicked] = useState<string | null>(chosen?.id ?? null);
  const query = other.trim() || (chosen && words === text ? '' : words.trim());
  const hits = useFoodSearch(query);

  const shown = chosen && !hits.some((hit) => hit.id === chosen.id) ? [chosen, ...hits] : hits;
  const stands = shown.some((hit) => hit.id === picked);
  const taken = (stands ? picked : null) ?? '';
  return (
    <div className="grid content-start gap-3">
      <Field form={form} name="text" label="Ingredient" hint="As you would write it." state={state}>
        {(wired) => (
          <input
            {...wired}
            className={CONTROL}
            autoComplete="off"
            value={words}
            onChange={(event) => setWords(event.target.value)}
          />
        )}
      </Field>
      {/* What is sent stands apart from the list: a form that was refused puts its own radios back. */}
      <input type="hidden" name="foodId" value={taken} />
      <fieldset key={state.attempt}>
        <legend className="font-semibold">Counted as</legend>
        <p role="status" className="text-fine text-soft">
          {hits.length > 0
            ? hits.length === 1
              ? '1 food fits: choose it, or leave it open.'
              : `${hits.length} foods fit, best first: choose the one you mean.`
            : 'Foods appear as you type.'}
        </p>
        <Field form={form} name="other" label="Look for a food by another name" quiet>
          {(wired) => (
            <input
              {...wired}
              type="search"
              className={CONTROL}
              autoComplete="off"
              placeholder="look by another name"
              value={other}
              onChange={(event) => setOther(event.target.value)}
            />
          )}
        </Field>
        {shown.map((hit) => (
          <Option
            key={hit.id}
            group={`${form}-foods`}
            value={hit.id}
            checked={taken === hit.id}
            onPick={setPicked}
            name={hit.name}
            note={hit.note}
          />
        ))}
        <Option
          group={`${form}-foods`}
          value=""
          checked={taken === ''}
          onPick={setPicked}
          name="leave open for now"
          note=""
        />
      </fieldset>
    </div>
  );
}

interface OptionProps {
  readonly group: string;
  readonly value: string;
  readonly checked: boolean;
  readonly onPick: (value: string) => void;
  readonly name: string;
  readonly note: string;
}

function Option({ group, value, checked, onPick, name, note }: OptionProps) {
  return (
    <label className="flex min-h-9 items-baseline gap-2.5 border-b border-line py-1 has-checked:font-semibold">
      <input
        type="radio"
        name={group}
        value={value}
        checked={checked}
        onChange={() => onPick(value)}
        className="size-4 shrink-0 self-start translate-y-1 accent-ink"
      />
      <span>
        {name}
        {note && <span className="block text-fine font-normal text-soft">{note}</span>}
      </span>
    </label>
  );
}
