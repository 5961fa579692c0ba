'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { Button } from '../../../../_ui/button';
import { ChoiceField, TextField, TickField } from '../../../../_ui/form/field';
import type { Piece } from '#lib/episode/publish-schema';
import { DISH } from '../piece-field-names';

interface Props {
  /** Unique on the page. */
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  /** All dishes of the episode, in viewing order. */
  readonly dishes: readonly { readonly id: string; readonly title: string }[];
  /** What stands in the fields at first. */
  readonly initial: Pick<Piece, 'kind' | 'title' | 'segmentIds' | 'limit'>;
  /** On the button. */
  readonly words: string;
}

const KINDS = [
  { value: 'clip', words: 'Clip' },
  { value: 'text', words: 'Text' },
];

/** What a piece is: kind, title, of which dishes or of the day, and how long its text may be. */
export function PieceForm({ id, action, hidden, dishes, initial, words }: Props) {
  return (
    <FormFrame id={id} action={action} fields={['kind', 'title', 'day', 'limit']} hidden={hidden}>
      {(state) => (
        <div className="grid max-w-3xl gap-4 md:grid-cols-[1fr_3fr_1fr]">
          <ChoiceField
            form={id}
            name="kind"
            label="Kind"
            choices={KINDS}
            state={state}
            initial={initial.kind}
          />
          <TextField form={id} name="title" label="Title" state={state} initial={initial.title} />
          <TextField
            form={id}
            name="limit"
            label="Length at most"
            hint="In characters."
            state={state}
            initial={String(initial.limit)}
            control={{ inputMode: 'numeric', autoComplete: 'off' }}
          />
          <fieldset className="md:col-span-3">
            <legend className="mb-1 font-semibold">What it is of</legend>
            <TickField
              form={id}
              name="day"
              label="The day"
              state={state}
              initial={initial.segmentIds === null}
            />
            {dishes.map((dish) => (
              <TickField
                key={dish.id}
                form={id}
                name={`${DISH}${dish.id}`}
                label={dish.title}
                state={state}
                initial={initial.segmentIds?.includes(dish.id) ?? false}
              />
            ))}
          </fieldset>
          <div>
            <Button>{words}</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
