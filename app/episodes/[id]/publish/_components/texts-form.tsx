'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { AreaField, TextField } from '../../../../_ui/form/field';
import { addWebLink, saveTexts } from '../actions';

interface Props {
  readonly episodeId: string;
  readonly rev: number;
  readonly hook: string;
  readonly disclosure: string;
}

/** The words of the description that are the person's own. */
export function TextsForm({ episodeId, rev, hook, disclosure }: Props) {
  const form = 'texts';
  return (
    <FormFrame
      id={form}
      action={saveTexts}
      fields={['hook', 'disclosure']}
      hidden={{ episodeId, rev }}
    >
      {(state) => (
        <div className="grid gap-4">
          <AreaField
            form={form}
            name="hook"
            label="Hook"
            hint="Stands under the title."
            state={state}
            initial={hook}
          />
          <AreaField
            form={form}
            name="disclosure"
            label="Disclosure"
            hint="Where something was given or paid, in your own words; empty for none. It belongs in the video too, where it is seen and heard (16 CFR 255)."
            state={state}
            initial={disclosure}
            control={{ rows: 2 }}
          />
          <div>
            <Button>Save hook and disclosure</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

/** A further link under the description. */
export function WebLinkForm({ episodeId }: Pick<Props, 'episodeId'>) {
  const form = 'web-link';
  return (
    <FormFrame id={form} action={addWebLink} fields={['label', 'url']} hidden={{ episodeId }}>
      {(state) => (
        <div className="grid items-end gap-4 md:grid-cols-[1fr_2fr_auto]">
          <TextField form={form} name="label" label="What it is" state={state} />
          <TextField
            form={form}
            name="url"
            label="Address"
            state={state}
            control={{ type: 'url', placeholder: 'https://' }}
          />
          <Button>Add the link</Button>
        </div>
      )}
    </FormFrame>
  );
}
