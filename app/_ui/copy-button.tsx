'use client';

import { useState } from 'react';
import { Button, type ButtonTone } from './button';
import { Icon } from './icons';
import { takeText, type Taken } from './take-text';

interface Props {
  readonly text: string;
  readonly label: string;
  /** The element that shows the text; it is selected where the browser gives no way to copy. */
  readonly shownIn: string;
  /**
   * Runs once the text is in the person's hands, as to lock the numbers in it: copied, or selected for keys of their own.
   */
  readonly afterCopy?: () => Promise<void>;
  /** `go` where copying is what the page is for. */
  readonly tone?: ButtonTone;
}

const WORDS: Readonly<Record<Taken, string>> = {
  copied: 'Copied.',
  selected: 'Selected: press Ctrl+C (⌘C on a Mac), on a phone choose Copy.',
  neither: 'This browser does not let it be copied here: select the text and copy it by hand.',
};

/** Copies a text. Where the browser won't (no secure connection, no leave), it selects the text instead. */
export function CopyButton({ text, label, shownIn, afterCopy, tone = 'go' }: Props) {
  const [taken, setTaken] = useState<Taken | null>(null);
  const copy = async () => {
    const outcome = await takeText(text, shownIn);
    setTaken(outcome);
    if (outcome !== 'neither') await afterCopy?.();
  };
  return (
    <span className="inline-flex flex-wrap items-center gap-x-4 gap-y-2 print:hidden">
      <Button type="button" tone={tone} onClick={() => void copy()}>
        <Icon name="copy" />
        {label}
      </Button>
      <span role="status" className="text-fine text-soft">
        {taken === null ? '' : WORDS[taken]}
      </span>
    </span>
  );
}
