'use client';

import { FormFrame } from '../_forms/form-frame';
import { Button } from '../_ui/button';
import { ChoiceField, TextField } from '../_ui/form/field';
import { newEpisode } from '../actions';

const FORM = 'new-episode';
const REGIONS = [
  { value: 'US', words: 'US labels' },
  { value: 'EU', words: 'EU labels' },
];

/** Begins an episode with a name; everything else can wait. */
export function NewEpisodeForm() {
  return (
    <FormFrame id={FORM} action={newEpisode} fields={['title', 'region', 'publishOn']}>
      {(state) => (
        <div className="grid gap-4">
          <TextField form={FORM} name="title" label="Title" state={state} />
          <div className="grid gap-4 md:grid-cols-2">
            <ChoiceField
              form={FORM}
              name="region"
              label="Numbers for"
              choices={REGIONS}
              initial="US"
              state={state}
            />
            <TextField
              form={FORM}
              name="publishOn"
              label="Publish on, if known"
              state={state}
              control={{ type: 'date' }}
            />
          </div>
          <div>
            <Button tone="go">Begin the episode</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
