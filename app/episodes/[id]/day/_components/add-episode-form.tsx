'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { ChoiceField, type Choice } from '../../../../_ui/form/field';
import { addEpisode } from '../days-actions';
import { PLACE } from '../field-names';

interface Props {
  readonly hidden: Readonly<Record<string, string>>;
  readonly segments: readonly { readonly id: string; readonly title: string }[];
  readonly ways: readonly Choice[];
}

/** What of another episode is filmed on the day, segment by segment. */
export function AddEpisodeForm({ hidden, segments, ways }: Props) {
  return (
    <FormFrame
      id="further-form"
      action={addEpisode}
      fields={segments.map(({ id }) => `${PLACE}${id}`)}
      hidden={hidden}
    >
      {(state, pending) => (
        <div className="grid gap-3">
          {segments.map(({ id, title }) => (
            <ChoiceField
              key={id}
              form="further-form"
              name={`${PLACE}${id}`}
              label={title}
              state={state}
              choices={ways}
            />
          ))}
          <div>
            <Button tone="go" aria-disabled={pending || undefined}>
              Film it on this day
            </Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
