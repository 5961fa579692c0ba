'use client';

import { useEffect } from 'react';
import { CODE_LENGTH, codeShown, readCode } from '#lib/door/code-text';

/** Puts the code of the scanned address into its field, and takes it out of the address. */
export function CodeFromLink({ field, next }: { readonly field: string; readonly next: string }) {
  useEffect(() => {
    const code = readCode(window.location.hash.slice(1));
    const control = document.getElementById(field);
    if (code.length !== CODE_LENGTH || !(control instanceof HTMLInputElement)) return;
    control.value = codeShown(code);
    window.history.replaceState(null, '', window.location.pathname);
    document.getElementById(next)?.focus();
  }, [field, next]);
  return null;
}
