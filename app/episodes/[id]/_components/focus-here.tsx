'use client';

import { useEffect } from 'react';

interface Props {
  /** The part that the address leads to, which can have the focus. */
  readonly id: string;
  /** What it is about: where that changes, it is another answer. */
  readonly of: string;
}

/** Puts the focus at the part that an act has led to, as a link to a part of the page does. */
export function FocusHere({ id, of }: Props) {
  useEffect(() => {
    if (window.location.hash === `#${id}`) document.getElementById(id)?.focus();
  }, [id, of]);
  return null;
}
