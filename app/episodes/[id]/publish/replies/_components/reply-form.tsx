'use client';

import { useState } from 'react';
import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import { CopyButton } from '../../../../../_ui/copy-button';
import { CONTROL, Field } from '../../../../../_ui/form/field';
import type { FormState } from '../../../../../_ui/form/form-state';
import { saveReply } from '../actions';
import { begunWith, replyField, typedOver, type OwnWords } from '../own-words';

/** The field of the reply, as `Field` names it. */
const FIELD = 'viewer-reply-text';

interface Drafts {
  /** The reply as it was saved; empty where none was. */
  readonly saved: string;
  readonly draft: string;
  /** Whether the draft answers something that was put right. */
  readonly asked: boolean;
}

interface Props extends Drafts {
  readonly hidden: Readonly<Record<string, string | number>>;
}

/** The drafted reply, to be put into the person's own words, copied and kept. */
export function ReplyForm({ hidden, ...drafts }: Props) {
  return (
    <FormFrame id="viewer-reply" action={saveReply} hidden={hidden} fields={['text']}>
      {(state, pending) => (
        <div className="grid max-w-3xl gap-3">
          <Words key={state.attempt} state={state} {...drafts} />
          <div>
            <Button aria-disabled={pending || undefined}>Save the reply</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

/** The person's own words stay; another draft stands beside them until it is taken. */
function Words({ state, saved, draft, asked }: Drafts & { readonly state: FormState }) {
  const { text: refused } = state.typed;
  const [own, setOwn] = useState(() =>
    refused === undefined ? begunWith(saved, draft, asked) : typedOver(null, refused, draft),
  );
  const [before, setBefore] = useState<OwnWords | null>(null);
  const { words, offered } = replyField(own, draft);
  // What was pressed is gone then: the focus goes on to the field.
  const put = (next: OwnWords | null) => {
    setBefore(own);
    setOwn(next);
    document.getElementById(FIELD)?.focus();
  };
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
            onChange={({ target }) => setOwn(typedOver(own, target.value, draft))}
          />
        )}
      </Field>
      <CopyButton text={words} label="Copy the reply" shownIn={FIELD} />
      {offered !== null && (
        <div role="status" className="border-l-[3px] border-ink pl-4">
          <p className="text-fine text-soft">Your words stay. The new draft reads:</p>
          <p className="mt-1 break-words whitespace-pre-wrap">{offered}</p>
          <div className="mt-2">
            <Button type="button" size="small" onClick={() => put(null)}>
              Take this draft
            </Button>
          </div>
        </div>
      )}
      {own === null && before !== null && (
        <div>
          <Button type="button" size="small" onClick={() => put(before)}>
            Back to my words
          </Button>
        </div>
      )}
    </>
  );
}
