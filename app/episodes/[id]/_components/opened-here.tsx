'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useLayoutEffect, useRef, type ReactNode } from 'react';

interface Props {
  /** The row that the form belongs to: focus returns to it. */
  readonly rowId: string;
  /** The page with the form closed. */
  readonly closeHref: string;
  readonly children: ReactNode;
}

const FIRST = 'input:not([type=hidden]):not([type=radio]), textarea, select, button, a[href]';

/**
 * A form that opened in its row. Its first field, or the one that says so, has the focus, unless somebody is in it already:
 * a page that came with the form open can be typed into before this runs. Escape closes it; when it closes, by whatever
 * way, the focus is in the row again and the row stands where it stood.
 */
export function OpenedHere({ rowId, closeHref, children }: Props) {
  const element = useRef<HTMLDivElement>(null);
  const router = useRouter();
  useLayoutEffect(() => {
    const opened = element.current;
    const first =
      opened?.querySelector<HTMLElement>('[data-first]') ??
      opened?.querySelector<HTMLElement>(FIRST);
    if (!opened?.contains(document.activeElement)) {
      first?.focus({ preventScroll: true });
      first?.scrollIntoView({ block: 'nearest' });
    }
    const row = document.getElementById(rowId);
    return () => {
      const top = row?.getBoundingClientRect().top ?? null;
      const { scrollY } = window;
      // Not before the page without the form stands, and after the router has scrolled.
      requestAnimationFrame(() => returnTo(rowId, top, scrollY));
    };
  }, [rowId]);
  useEffect(() => {
    const form = element.current;
    const listen = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented) return;
      event.preventDefault();
      router.push(closeHref, { scroll: false });
    };
    form?.addEventListener('keydown', listen);
    return () => form?.removeEventListener('keydown', listen);
  }, [closeHref, router]);
  return <div ref={element}>{children}</div>;
}

function returnTo(rowId: string, top: number | null, scrollY: number): void {
  const row = document.getElementById(rowId);
  const active = document.activeElement;
  // Somebody has put the focus elsewhere since, or another form has opened.
  const free = active === null || active === document.body || !active.isConnected;
  if (!free) return;
  if (!row) {
    // It was taken out: the page stays where it was.
    window.scrollTo(0, scrollY);
    return;
  }
  const takes = row.tabIndex >= 0 || row.hasAttribute('tabindex');
  const target = takes ? row : row.querySelector<HTMLElement>('[data-opens]');
  target?.focus({ preventScroll: true });
  if (top !== null) window.scrollBy(0, row.getBoundingClientRect().top - top);
}
