'use client';

import { useState } from 'react';
import { Button, type ButtonTone } from './button';
import { Icon } from './icons';

interface Props {
  readonly text: string;
  readonly label: string;
  /** The element that shows the text; it is selected where the browser gives no way to copy. */
  readonly shownIn: string;
  /** Runs once the text was taken, as to lock the numbers in it. */
  readonly afterCopy?: () => Promise<void>;
  /** `go` where copying is what the page is for. */
  readonly tone?: ButtonTone;
}

type Outcome = 'none' | 'copied' | 'selected';

const WORDS: Readonly<Record<Outcome, string>> = {
  none: '',
  copied: 'Copied.',
  selected: 'The text is selected: copy it with your own keys or menu.',
};

/** Copies a text. Where the browser won't (no secure connection, no leave), it selects the text instead. */
export function CopyButton({ text, label, shownIn, afterCopy, tone = 'go' }: Props) {
  const [outcome, setOutcome] = useState<Outcome>('none');
  const copy = async () => {
    setOutcome(await take(text, shownIn));
    await afterCopy?.();
  };
  return (
    <span className="inline-flex flex-wrap items-center gap-x-4 gap-y-2 print:hidden">
      <Button type="button" tone={tone} onClick={() => void copy()}>
        <Icon name="copy" />
        {label}
      </Button>
      <span role="status" className="text-fine text-soft">
        {WORDS[outcome]}
      </span>
    </span>
  );
}

async function take(text: string, shownIn: string): Promise<Outcome> {
  try {
    await navigator.clipboard.writeText(text);
    return 'copied';
  } catch {
    const element = document.getElementById(shownIn);
    if (element) window.getSelection()?.selectAllChildren(element);
    return 'selected';
  }
}
