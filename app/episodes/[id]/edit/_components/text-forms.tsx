'use client';

import type { TextKind } from '#lib/episode/edit-schema';
import type { SaidKind } from '#lib/overview/said-kinds';
import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { AreaField, ChoiceField, TextField } from '../../../../_ui/form/field';
import type { FormState } from '../../../../_ui/form/form-state';
import { bringInNewer, bringInText } from '../actions';
import { FileField } from './file-field';

const KINDS: Readonly<Record<TextKind, string>> = {
  captions: 'Captions or a transcript',
  description: 'A description',
  title: 'A title',
  thumbnail: 'Words of a thumbnail',
  card: 'Words of a card',
};

const EXAMPLE = '1\n00:03:10,200 --> 00:03:12,900\nthe whole tray is 640 calories';

/** A text of any kind, pasted or from a file. */
export function NewTextForm({ episodeId }: { readonly episodeId: string }) {
  const form = 'new-text';
  return (
    <FormFrame
      id={form}
      action={bringInText}
      fields={['kind', 'name', 'text', 'file']}
      hidden={{ episodeId }}
    >
      {(state) => (
        <div className="grid max-w-3xl gap-4">
          <div className="grid gap-4 md:grid-cols-2">
            <ChoiceField
              form={form}
              name="kind"
              label="What it is"
              state={state}
              choices={Object.entries(KINDS).map(([value, words]) => ({ value, words }))}
            />
            <TextField
              form={form}
              name="name"
              label="Called, if you like"
              state={state}
              control={{ maxLength: 120, placeholder: 'second title' }}
            />
          </div>
          <Words form={form} state={state} />
          <div>
            <Button tone="go">Bring it in</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

interface NewerProps {
  readonly episodeId: string;
  readonly textId: string;
  readonly rev: number;
  readonly kind: SaidKind;
}

/** A newer text in the place of one. */
export function NewerTextForm({ episodeId, textId, rev, kind }: NewerProps) {
  const form = `newer-${textId}`;
  return (
    <FormFrame
      id={form}
      action={bringInNewer}
      fields={['text', 'file']}
      hidden={{ episodeId, textId, rev }}
    >
      {(state) => (
        <div className="grid max-w-3xl gap-4 pb-3">
          <p className="max-w-[60ch] text-fine text-soft">
            Readings that you put right hold on to their words and stay
            {kind === 'captions' ? ', whatever the new times are' : ''}.
          </p>
          <Words form={form} state={state} />
          <div>
            <Button>Take it instead</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

function Words({ form, state }: { readonly form: string; readonly state: FormState }) {
  return (
    <>
      <AreaField
        form={form}
        name="text"
        label="Paste it"
        hint="Captions as WebVTT or SubRip, a transcript with times as [3:10] or without, or the text itself."
        state={state}
        control={{ rows: 6, placeholder: EXAMPLE, spellCheck: false }}
      />
      <FileField form={form} state={state} />
    </>
  );
}
