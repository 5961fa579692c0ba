'use client';

import { useEffect, useRef, type ReactNode } from 'react';

interface Props {
  /** How many things there are to answer; as one goes, the focus goes on to the next. */
  readonly left: number;
  readonly children: ReactNode;
}

/** A list of things to answer: answering one leads to the next, rather than back to the top of the page. */
export function KeepFocus({ left, children }: Props) {
  const element = useRef<HTMLDivElement>(null);
  const before = useRef(left);
  useEffect(() => {
    const fewer = left < before.current;
    before.current = left;
    if (!fewer || document.activeElement !== document.body) return;
    element.current?.querySelector<HTMLElement>('button, summary, input')?.focus();
  }, [left]);
  return <div ref={element}>{children}</div>;
}
