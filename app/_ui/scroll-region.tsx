import type { ReactNode } from 'react';

/** A region that scrolls must be reached by keyboard to be scrolled (WCAG 2.2, success criterion 2.1.1). */
const REACHABLE = { tabIndex: 0 } as const;

/**
 * Something wider than a phone, which scrolls in itself and leaves the page alone. It is `relative` so
 * that words meant for screen readers alone, which are placed absolutely, are clipped with the rest; its
 * sides have room for the ring of what has the focus.
 */
export function ScrollRegion({
  label,
  children,
}: {
  readonly label: string;
  readonly children: ReactNode;
}) {
  return (
    <div
      className="relative -mx-1 overflow-x-auto px-1 print:mx-0 print:px-0"
      role="region"
      aria-label={label}
      {...REACHABLE}
    >
      {children}
    </div>
  );
}
