'use client';

import { useRef } from 'react';
import { useSentForm } from '../../../../_forms/use-sent-form';
import { Button } from '../../../../_ui/button';
import { CopyButton } from '../../../../_ui/copy-button';
import { copyDescription } from '../actions';

interface Props {
  readonly episodeId: string;
  readonly text: string;
  /** "plain", "markdown" or "html". */
  readonly form: string;
  /** Parts left out, with commas between them. */
  readonly without: string;
  /** The element that shows the text. */
  readonly shownIn: string;
  readonly label: string;
}

/** Copies the description; once it was taken, it is kept with its lock, which is taken where there is none. */
export function CopyAndLock({ episodeId, text, form: textForm, without, shownIn, label }: Props) {
  const { state, form: sent } = useSentForm(copyDescription);
  const form = useRef<HTMLFormElement>(null);
  const lock = () => Promise.resolve(form.current?.requestSubmit());
  return (
    <form ref={form} {...sent} className="print:hidden">
      <input type="hidden" name="episodeId" value={episodeId} />
      <input type="hidden" name="text" value={text} />
      <input type="hidden" name="form" value={textForm} />
      <input type="hidden" name="without" value={without} />
      <CopyButton text={text} label={label} shownIn={shownIn} afterCopy={lock} />
      <noscript>
        <Button>I have copied it by hand: keep it with its numbers</Button>
      </noscript>
      <p role="alert" className="font-semibold text-hand">
        {state.problems.map((problem) => problem.message).join(' ')}
      </p>
      <p role="status" className={state.done ? 'text-soft' : 'unseen'}>
        {state.done}
      </p>
    </form>
  );
}
