'use client';

import { FormFrame, type KeptTyping } from '../../../_forms/form-frame';
import { AreaField, ChoiceField, TextField } from '../../../_ui/form/field';
import { saveEpisode } from '../actions';
import { SaveOrLeave } from './save-or-leave';

interface Props {
  readonly episodeId: string;
  readonly rev: number;
  readonly title: string;
  readonly hook: string;
  readonly region: string;
  readonly publishOn: string;
  readonly disclosure: string;
  readonly cancelHref: string;
  readonly kept?: KeptTyping | null | undefined;
}

const FORM = 'episode';
const FIELDS = ['title', 'hook', 'region', 'publishOn', 'disclosure'];
const REGIONS = [
  { value: 'US', words: 'US: calories, total carbohydrate, sodium' },
  { value: 'EU', words: 'EU: energy, available carbohydrate, salt' },
];

/** Title, hook, region and date of the episode. */
export function EpisodeForm({ episodeId, rev, cancelHref, kept, ...texts }: Props) {
  return (
    <FormFrame
      id={FORM}
      action={saveEpisode}
      hidden={{ episodeId, rev }}
      fields={FIELDS}
      kept={kept}
    >
      {(state) => (
        <div className="grid max-w-3xl gap-4">
          <TextField form={FORM} name="title" label="Title" initial={texts.title} state={state} />
          <AreaField
            form={FORM}
            name="hook"
            label="Hook"
            hint="The promise at the beginning, and the first lines of the description."
            initial={texts.hook}
            state={state}
          />
          <div className="grid gap-4 md:grid-cols-2">
            <ChoiceField
              form={FORM}
              name="region"
              label="Numbers for"
              choices={REGIONS}
              initial={texts.region}
              state={state}
            />
            <TextField
              form={FORM}
              name="publishOn"
              label="Publish on"
              initial={texts.publishOn}
              state={state}
              control={{ type: 'date' }}
            />
          </div>
          <TextField
            form={FORM}
            name="disclosure"
            label="Given or paid"
            hint="Your own wording where something was; it goes into the description."
            initial={texts.disclosure}
            state={state}
          />
          <SaveOrLeave submit="Save" cancelHref={cancelHref} tone="go" />
        </div>
      )}
    </FormFrame>
  );
}
