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

type Stage = 'none' | 'asked' | 'saved' | 'failed';

const WORDS: Readonly<Record<Stage, string>> = {
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
    setStage((await save(href, name)) ? 'saved' : 'failed');
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
        className={`text-fine ${stage === 'failed' ? 'font-semibold text-hand' : 'text-soft'}`}
      >
        {WORDS[stage]}
      </span>
    </span>
  );
}

/** Whether the file came whole and was handed to the browser to save. */
async function save(href: string, name: string): Promise<boolean> {
  try {
    const answer = await fetch(href);
    if (!answer.ok) return false;
    const address = URL.createObjectURL(await answer.blob());
    const link = document.createElement('a');
    link.href = address;
    link.download = nameIn(answer) ?? name;
    link.click();
    // Not at once: the browser has yet to read it.
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
    return true;
  } catch {
    return false;
  }
}

const nameIn = ({ headers }: Response): string | undefined =>
  /filename="([^"]+)"/.exec(headers.get('content-disposition') ?? '')?.[1];
