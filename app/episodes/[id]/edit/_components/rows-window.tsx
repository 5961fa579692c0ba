'use client';

import { defaultRangeExtractor, useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useEffectEvent, useRef, type ReactNode } from 'react';

/** The row that is to be seen; a new `tick` asks again. */
export interface Shown {
  readonly index: number;
  readonly tick: number;
}

interface Props {
  readonly label: string;
  readonly count: number;
  readonly keyOf: (index: number) => string;
  /** How high a row is before it was drawn, in pixels. */
  readonly estimate: number;
  readonly show: Shown | null;
  readonly align: 'center' | 'auto';
  /** A row that stays drawn wherever the list is, as one in which something is typed. */
  readonly keep?: number;
  readonly className: string;
  readonly children: (index: number) => ReactNode;
}

/** What is drawn before the window was measured, and on the server. */
const FIRST = { width: 600, height: 640 };

/** A region that scrolls must be reached by keyboard to be scrolled (WCAG 2.2, success criterion 2.1.1). */
const REACHABLE = { tabIndex: 0 } as const;

/** A long list in a window of its own: only the rows that are seen, and some around them, are drawn. */
export function RowsWindow({
  label,
  count,
  keyOf,
  estimate,
  show,
  align,
  keep = -1,
  className,
  children,
}: Props) {
  'use no memo';
  const region = useRef<HTMLDivElement>(null);
  // eslint-disable-next-line react-hooks/incompatible-library -- this component is left uncompiled
  const rows = useVirtualizer({
    count,
    getScrollElement: () => region.current,
    estimateSize: () => estimate,
    getItemKey: keyOf,
    initialRect: FIRST,
    overscan: 8,
    useFlushSync: false,
    rangeExtractor: (range) => {
      const seen = defaultRangeExtractor(range);
      return keep < 0 || keep >= count || seen.includes(keep)
        ? seen
        : [...seen, keep].sort((a, b) => a - b);
    },
  });
  const scrollTo = useEffectEvent((index: number) => {
    rows.scrollToIndex(index, { align });
  });
  const [index, tick] = [show?.index ?? -1, show?.tick];
  useEffect(() => {
    if (index >= 0) scrollTo(index);
  }, [tick, index]);
  return (
    <div
      ref={region}
      role="region"
      aria-label={label}
      className={`relative overflow-y-auto ${className}`}
      {...REACHABLE}
    >
      <ol className="relative" style={{ height: rows.getTotalSize() }}>
        {rows.getVirtualItems().map(({ index, key, start }) => (
          <li
            key={key}
            ref={rows.measureElement}
            data-index={index}
            aria-setsize={count}
            aria-posinset={index + 1}
            className="absolute inset-x-0 top-0"
            style={{ transform: `translateY(${start}px)` }}
          >
            {children(index)}
          </li>
        ))}
      </ol>
    </div>
  );
}
