'use client';

import { ButtonForm } from '../../../../_forms/button-form';
import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { ChoiceField, TextField } from '../../../../_ui/form/field';
import { isAbout, saysNothing, takeReadingBack, wasHeard } from '../reading-actions';
import { placeValues } from './place-values';
import type { EditPage, Row } from './view';

interface Props {
  readonly page: EditPage;
  readonly row: Row;
}

/** How words are to be read, where the person knows better. It holds when the captions are loaded again. */
export function MendReading({ page, row }: Props) {
  if (row.mend) {
    return (
      <div className="flex flex-wrap items-center gap-x-4 gap-y-1 border-l-[3px] border-ink pl-3">
        <p>{row.mend.words}</p>
        <ButtonForm
          action={takeReadingBack}
          values={{ episodeId: page.episodeId, mendId: row.mend.id, rev: row.mendRev }}
          tone="plain"
        >
          Read it as before
        </ButtonForm>
      </div>
    );
  }
  const hidden = placeValues(page, row);
  return (
    <details>
      <summary className="link min-h-8 content-center">Read it otherwise</summary>
      <div className="mt-2 grid max-w-2xl gap-4">
        <div>
          <ButtonForm action={saysNothing} values={hidden} tone="plain" size="usual">
            It says nothing of the numbers
          </ButtonForm>
        </div>
        <Heard form={`heard-${row.id}`} hidden={hidden} row={row} />
        <About form={`about-${row.id}`} hidden={hidden} page={page} />
      </div>
    </details>
  );
}

interface FormProps {
  readonly form: string;
  readonly hidden: ReturnType<typeof placeValues>;
}

function Heard({ form, hidden, row }: FormProps & { readonly row: Row }) {
  return (
    <FormFrame id={form} action={wasHeard} fields={['heard']} hidden={hidden}>
      {(state) => (
        <div className="grid items-end gap-3 md:grid-cols-[1fr_auto]">
          <TextField
            form={form}
            name="heard"
            label="What was really said, in the place of these words"
            state={state}
            initial={row.words}
          />
          <Button>Keep what was said</Button>
        </div>
      )}
    </FormFrame>
  );
}

function About({ form, hidden, page }: FormProps & { readonly page: EditPage }) {
  return (
    <FormFrame id={form} action={isAbout} fields={['about']} hidden={hidden}>
      {(state) => (
        <div className="grid items-end gap-3 md:grid-cols-[1fr_auto]">
          <ChoiceField
            form={form}
            name="about"
            label="What it is about"
            state={state}
            choices={[{ value: '', words: 'choose' }, ...page.abouts]}
          />
          <Button>Keep what it is about</Button>
        </div>
      )}
    </FormFrame>
  );
}
