'use client';

import { useEffect, useState, type RefObject } from 'react';
import type { Texts } from './label-texts';

/** How long after the last key a text counts as typed to its end. */
const PAUSE_MS = 900;
/** After a press: its click comes first. */
const RELEASE_MS = 100;

/** What stands in the fields: with every key, and once a field was left or the keys have paused. */
export interface Typed {
  readonly now: Texts;
  readonly settled: Texts;
}

/**
 * Listens to all fields of the form around an element. The fields keep their own texts, so that nothing typed
 * before the script came is lost.
 * @param initial what the fields show first
 * @param arrangement changes where the form gets other fields, which are then read anew
 */
export function useTypedTexts(
  inside: RefObject<HTMLElement | null>,
  initial: Texts,
  arrangement: string,
): Typed {
  const [typed, setTyped] = useState<Typed>({ now: initial, settled: initial });
  useEffect(() => {
    const form = inside.current?.closest('form');
    if (!form) return undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const settle = () => {
      clearTimeout(timer);
      const read = textsOf(form);
      setTyped(({ now }) => ({ now: { ...now, ...read }, settled: { ...now, ...read } }));
    };
    const note = () => {
      const read = textsOf(form);
      setTyped(({ now, settled }) => ({ now: { ...now, ...read }, settled }));
      clearTimeout(timer);
      timer = setTimeout(settle, PAUSE_MS);
    };
    // A field that is left by pressing something else settles after that press: nothing moves under the pointer.
    let pressed = false;
    const press = () => {
      pressed = true;
    };
    const release = () => {
      if (pressed) timer = setTimeout(settle, RELEASE_MS);
      pressed = false;
    };
    const left = () => {
      if (!pressed) settle();
    };
    form.addEventListener('input', note);
    form.addEventListener('change', left);
    form.addEventListener('pointerdown', press);
    document.addEventListener('pointerup', release);
    document.addEventListener('pointercancel', release);
    const first = requestAnimationFrame(settle);
    return () => {
      form.removeEventListener('input', note);
      form.removeEventListener('change', left);
      form.removeEventListener('pointerdown', press);
      document.removeEventListener('pointerup', release);
      document.removeEventListener('pointercancel', release);
      cancelAnimationFrame(first);
      clearTimeout(timer);
    };
  }, [inside, arrangement]);
  return typed;
}

function textsOf(form: HTMLFormElement): Record<string, string> {
  return Object.fromEntries(
    [...new FormData(form)].filter(
      (entry): entry is [string, string] =>
        typeof entry[1] === 'string' && !entry[0].startsWith('$ACTION'),
    ),
  );
}

/** Writes texts into fields of a form as if they were typed. */
export function typeInto(form: HTMLFormElement, texts: Texts): void {
  for (const [name, text] of Object.entries(texts)) {
    const field = form.elements.namedItem(name);
    if (!(field instanceof HTMLInputElement)) continue;
    field.value = text;
    field.dispatchEvent(new Event('change', { bubbles: true }));
  }
}
