'use client';

import { useState } from 'react';
import { buttonClass, type ButtonSize, type ButtonTone } from './button';

interface Props {
  readonly href: string;
  /** The name to save it under, where the answer says none. */
  readonly name: string;
  readonly tone?: ButtonTone;
  readonly size?: ButtonSize;
  readonly children: string;
}

/** `refused` with what the answer says of it. */
type Stage = 'none' | 'asked' | 'saved' | 'failed' | { readonly refused: string };

const WORDS: Readonly<Record<Extract<Stage, string>, string>> = {
  none: '',
  asked: 'Being made …',
  saved: 'Saved.',
  failed: 'It could not be made or did not come whole, so nothing was saved. Press it again.',
};

/** A file that is made when it is asked for. It is saved whole or not at all, and the page says which. */
export function DownloadLink({ href, name, tone = 'plain', size = 'usual', children }: Props) {
  const [stage, setStage] = useState<Stage>('none');
  const fetchAll = async () => {
    setStage('asked');
    setStage(await save(href, name));
  };
  return (
    <span className="inline-flex flex-wrap items-center gap-x-3 gap-y-1">
      <a
        href={href}
        download
        className={buttonClass(tone, size)}
        onClick={(event) => {
          event.preventDefault();
          if (stage !== 'asked') void fetchAll();
        }}
      >
        {children}
      </a>
      <span
        role="status"
        className={`text-fine ${typeof stage === 'object' || stage === 'failed' ? 'font-semibold text-hand' : 'text-soft'}`}
      >
        {typeof stage === 'object' ? stage.refused : WORDS[stage]}
      </span>
    </span>
  );
}

/** Saved if the file came whole and was handed to the browser. */
async function save(href: string, name: string): Promise<Stage> {
  try {
    const answer = await fetch(href);
    // What is refused is refused again: the answer says why.
    if (answer.status >= 400 && answer.status < 500) return { refused: await answer.text() };
    if (!answer.ok) return 'failed';
    const address = URL.createObjectURL(await answer.blob());
    const link = document.createElement('a');
    link.href = address;
    link.download = nameIn(answer) ?? name;
    link.click();
    // Not at once: the browser has yet to read it.
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
    return 'saved';
  } catch {
    return 'failed';
  }
}

const nameIn = ({ headers }: Response): string | undefined =>
  /filename="([^"]+)"/.exec(headers.get('content-disposition') ?? '')?.[1];
