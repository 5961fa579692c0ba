'use client';

import { useEffect, useRef, type ReactNode } from 'react';

interface Props {
  readonly children: ReactNode;
}

/**
 * Rows that are one stop for the keys: the arrows go from row to row, Enter or a double press opens the row's
 * form. A row is an element with `data-member`; what opens it carries `data-opens`.
 */
export function RowKeys({ children }: Props) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const rows = () => [...element.querySelectorAll<HTMLElement>('[data-member]')];
    const open = (row: Element) => row.querySelector<HTMLElement>('[data-opens]')?.click();
    const go = (row: HTMLElement | undefined) => {
      if (!row) return;
      for (const each of rows()) each.tabIndex = each === row ? 0 : -1;
      row.focus();
    };
    const onKeyDown = (event: KeyboardEvent) => {
      const row = event.target;
      if (!(row instanceof HTMLElement) || row.dataset.member === undefined) return;
      const all = rows();
      const at = all.indexOf(row);
      if (event.key === 'Enter') open(row);
      else if (event.key === 'ArrowDown') go(all[at + 1]);
      else if (event.key === 'ArrowUp') go(all[at - 1]);
      else return;
      event.preventDefault();
    };
    const onDoubleClick = ({ target }: MouseEvent) => {
      if (!(target instanceof Element) || target.closest('a, button, input, label')) return;
      const row = target.closest('[data-member]');
      if (row) open(row);
    };
    element.addEventListener('keydown', onKeyDown);
    element.addEventListener('dblclick', onDoubleClick);
    return () => {
      element.removeEventListener('keydown', onKeyDown);
      element.removeEventListener('dblclick', onDoubleClick);
    };
  }, []);
  return <div ref={box}>{children}</div>;
}
