'use client';

import { FormFrame } from '../_forms/form-frame';
import { Working } from '../_forms/working';
import { Button } from '../_ui/button';
import { AreaField, TextField } from '../_ui/form/field';
import { FileField } from '../episodes/[id]/edit/_components/file-field';
import { beginFromTexts } from '../out-actions';

const FORM = 'already-out';
const CAPTIONS =
  '[0:00] Two dishes today, one oven.\n[0:31] First up, the barley skillet. I used 90 grams of barley …';
const DESCRIPTION =
  '0:00 Intro\n0:31 Barley skillet\n\nBarley skillet (serves 2)\n90 g pearl barley, dry\n150 g cottage cheese';

/** An episode that is already out: its words as they stand, and nothing else is asked. */
export function OutEpisodeForm() {
  return (
    <FormFrame
      id={FORM}
      action={beginFromTexts}
      fields={['title', 'captions', 'file', 'description']}
    >
      {(state, pending) => (
        <div className="@container grid gap-4">
          <TextField
            form={FORM}
            name="title"
            label="Its title"
            state={state}
            control={{ autoComplete: 'off' }}
          />
          <div className="grid gap-4 @2xl:grid-cols-2">
            <div className="grid content-start gap-4">
              <AreaField
                form={FORM}
                name="captions"
                label="Captions or transcript"
                hint="WebVTT, SubRip, or words with times before them; words alone will do."
                state={state}
                control={{ rows: 9, placeholder: CAPTIONS, spellCheck: false }}
              />
              <FileField form={FORM} state={state} />
            </div>
            <AreaField
              form={FORM}
              name="description"
              label="Description"
              hint="All of it, as it stands under the episode: chapters, ingredients, links."
              state={state}
              control={{ rows: 9, placeholder: DESCRIPTION, spellCheck: false }}
            />
          </div>
          <div className="flex flex-wrap items-center gap-x-5 gap-y-1">
            <Button tone="go" aria-disabled={pending || undefined}>
              See what was said
            </Button>
            <Working
              pending={pending}
              words="Reading your texts and looking up the foods: a few seconds."
            />
          </div>
        </div>
      )}
    </FormFrame>
  );
}
