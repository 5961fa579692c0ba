'use client';

import { useState } from 'react';
import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { ChoiceField, TextField } from '../../../_ui/form/field';
import type { FormState } from '../../../_ui/form/form-state';
import type { Portion } from '#lib/episode/recipe-schema';
import { addPortion } from '../portion-actions';

interface Props {
  readonly episodeId: string;
  readonly recipeId: string;
  /** How far a share by eye may miss in this kitchen, in percent. */
  readonly spread: string;
  /** Where that comes from. */
  readonly spreadFrom: string;
}

type Kind = Portion['kind'];

const KINDS: readonly { readonly value: Kind; readonly words: string }[] = [
  { value: 'count', words: 'equal portions, one of so many' },
  { value: 'mass', words: 'grams of the finished dish' },
  { value: 'byEye', words: 'a part taken by eye' },
];
const SIZES: Readonly<Record<Kind, readonly [label: string, hint: string]>> = {
  count: ['Into how many', 'As 4. Each is exactly one of so many.'],
  mass: ['Grams', 'As 180, on the scale.'],
  byEye: ['Part of the dish', 'As 1/3.'],
};

/** Says into how many portions a dish goes, how heavy one is, or what part is taken by eye. */
export function PortionForm(props: Props) {
  const { episodeId, recipeId } = props;
  return (
    <FormFrame
      id={`portion-${recipeId}`}
      action={addPortion}
      hidden={{ episodeId, recipeId }}
      fields={['kind', 'size', 'spread', 'name']}
    >
      {(state) => <PortionFields {...props} state={state} />}
    </FormFrame>
  );
}

function PortionFields({
  recipeId,
  spread,
  spreadFrom,
  state,
}: Props & { readonly state: FormState }) {
  const form = `portion-${recipeId}`;
  const sent = KINDS.find(({ value }) => value === state.typed.kind)?.value;
  const [kind, setKind] = useState<Kind>(sent ?? 'count');
  const [label, hint] = SIZES[kind];
  return (
    <div className="grid max-w-xl gap-4">
      <ChoiceField
        form={form}
        name="kind"
        label="Portions"
        choices={KINDS}
        initial={sent ?? 'count'}
        state={state}
        control={{ onChange: ({ target }) => setKind(target.value as Kind) }}
      />
      <TextField
        form={form}
        name="size"
        label={label}
        hint={hint}
        state={state}
        control={{ autoComplete: 'off' }}
      />
      {kind === 'byEye' && (
        <TextField
          form={form}
          name="spread"
          label="May miss by, ± %"
          hint={spreadFrom}
          initial={spread}
          state={state}
          control={{ inputMode: 'decimal', autoComplete: 'off' }}
        />
      )}
      <TextField
        form={form}
        name="name"
        label="Said as"
        hint="As “one of two” or “a bowl”. Empty for the plain words."
        state={state}
      />
      <div>
        <Button>Add the portion</Button>
      </div>
    </div>
  );
}
