'use client';

import { useEffect, type RefObject } from 'react';

/**
 * Enter goes on to the next field that is seen, and sends the form from the last one. Boxes to tick, buttons and
 * texts of several lines keep their own Enter.
 */
export function useEnterMovesOn(inside: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const form = inside.current?.closest('form');
    if (!form) return undefined;
    const moveOn = (event: KeyboardEvent) => {
      const { target } = event;
      if (event.key !== 'Enter' || event.isComposing || !isField(target)) return;
      const fields = [...form.elements].filter(isField).filter(isSeen);
      const next = fields[fields.indexOf(target) + 1];
      if (!next) return;
      event.preventDefault();
      next.focus();
      if (next instanceof HTMLInputElement) next.select();
    };
    form.addEventListener('keydown', moveOn);
    return () => form.removeEventListener('keydown', moveOn);
  }, [inside]);
}

type FieldElement = HTMLInputElement | HTMLSelectElement;

function isField(element: unknown): element is FieldElement {
  if (element instanceof HTMLSelectElement) return true;
  return element instanceof HTMLInputElement && /^(?:text|date)$/.test(element.type);
}

/** What lies in a closed fold is not seen, though it may have a box. */
function isSeen(element: FieldElement): boolean {
  return element.closest('details:not([open])') === null;
}
