'use client';

import { useState, type ReactNode } from 'react';

interface Props {
  readonly words: string;
  /** Stands open at first; from then on it is as the person leaves it, whatever changes around it. */
  readonly open?: boolean;
  /** A heading's size, for the larger ones. */
  readonly large?: boolean;
  readonly children: ReactNode;
}

/** Something folded away under a line of words. */
export function Disclosure({ words, open: initial = false, large = false, children }: Props) {
  const [open, setOpen] = useState(initial);
  const size = large ? 'font-slate text-head font-semibold' : '';
  return (
    <details
      className="print:hidden"
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary className={`link min-h-11 content-center ${size}`}>{words}</summary>
      <div className="mt-2">{children}</div>
    </details>
  );
}
