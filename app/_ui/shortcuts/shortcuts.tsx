'use client';

import { usePathname, useRouter } from 'next/navigation';
import { useEffect, useRef, useSyncExternalStore } from 'react';
import { Button } from '../button';
import { KeyList } from './key-list';
import { isTyping, nextKey, PAGE_KEY, shortcutsFor, type Shortcut } from './keys';

const SWITCH = 'shortcuts';
const CHANGED = 'shortcuts-changed';

function readSwitch(): boolean {
  return window.localStorage.getItem(SWITCH) !== 'off';
}

function subscribe(tell: () => void): () => void {
  window.addEventListener(CHANGED, tell);
  window.addEventListener('storage', tell);
  return () => {
    window.removeEventListener(CHANGED, tell);
    window.removeEventListener('storage', tell);
  };
}

function setSwitch(on: boolean): void {
  window.localStorage.setItem(SWITCH, on ? 'on' : 'off');
  window.dispatchEvent(new Event(CHANGED));
}

function focusFirstField(id: string): void {
  document
    .getElementById(id)
    ?.querySelector<HTMLElement>('input:not([type=hidden]), textarea, select')
    ?.focus();
}

/**
 * The keys and their list. '?' opens it; all are silent while something is typed or with Ctrl, Alt or
 * Meta held, and can be switched off (WCAG 2.2, success criterion 2.1.4).
 */
export function Shortcuts() {
  const path = usePathname();
  const router = useRouter();
  const dialog = useRef<HTMLDialogElement>(null);
  const on = useSyncExternalStore(subscribe, readSwitch, () => true);
  const shortcuts = shortcutsFor(path);

  useEffect(() => {
    if (!on) return;
    let pending: readonly string[] = [];
    const act = ({ does }: Shortcut) => {
      if (does.kind === 'go') router.push(does.href);
      else if (does.kind === 'focus') focusFirstField(does.id);
      else if (does.kind === 'page') {
        document.dispatchEvent(new CustomEvent(PAGE_KEY, { detail: does.does }));
      } else dialog.current?.showModal();
    };
    const listen = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey || dialog.current?.open) return;
      if (event.target instanceof HTMLElement && isTyping(event.target)) return;
      const next = nextKey(shortcutsFor(path), pending, event.key);
      pending = next.pending;
      if (!next.shortcut) return;
      event.preventDefault();
      act(next.shortcut);
    };
    document.addEventListener('keydown', listen);
    return () => document.removeEventListener('keydown', listen);
  }, [on, path, router]);

  return (
    <>
      <Button type="button" tone="bare" size="small" onClick={() => dialog.current?.showModal()}>
        Keys
      </Button>
      <dialog
        ref={dialog}
        aria-labelledby="keys-title"
        className="m-auto w-[min(28rem,calc(100vw-2rem))] border-[1.5px] border-ink bg-paper p-6 text-ink"
      >
        <h2 id="keys-title">Keys</h2>
        <KeyList shortcuts={shortcuts} />
        <label className="mt-4 flex min-h-11 items-center gap-3">
          <input
            type="checkbox"
            className="size-5 accent-ink"
            checked={on}
            onChange={(event) => setSwitch(event.target.checked)}
          />
          Keys are on
        </label>
        <form method="dialog" className="mt-3">
          <Button tone="go">Close</Button>
        </form>
      </dialog>
    </>
  );
}
