'use client';

import { useState } from 'react';
import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import { CopyButton } from '../../../../../_ui/copy-button';
import { CONTROL, Field } from '../../../../../_ui/form/field';
import type { FormState } from '../../../../../_ui/form/form-state';
import { saveReply } from '../actions';

interface Props {
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly text: string;
}

/** The drafted reply, to be put into the person's own words, copied and kept. */
export function ReplyForm({ hidden, text }: Props) {
  return (
    <FormFrame id="viewer-reply" action={saveReply} hidden={hidden} fields={['text']}>
      {(state, pending) => (
        <div className="grid max-w-3xl gap-3">
          <Words key={state.attempt} state={state} text={text} />
          <div>
            <Button aria-disabled={pending || undefined}>Save the reply</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

function Words({ state, text }: { readonly state: FormState; readonly text: string }) {
  const [words, setWords] = useState(state.typed.text ?? text);
  return (
    <>
      <Field form="viewer-reply" state={state} name="text" label="Your reply">
        {(wired) => (
          <textarea
            {...wired}
            rows={6}
            maxLength={4000}
            className={CONTROL}
            value={words}
            onChange={(event) => setWords(event.target.value)}
          />
        )}
      </Field>
      <CopyButton text={words} label="Copy the reply" shownIn="viewer-reply-text" />
    </>
  );
}
