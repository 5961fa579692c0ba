'use client';

import { useVirtualizer, useWindowVirtualizer, type VirtualItem } from '@tanstack/react-virtual';
import {
  useEffect,
  useEffectEvent,
  useLayoutEffect,
  useRef,
  useState,
  type ReactNode,
} from 'react';
import { alignOf, movesWhatIsSeen, rowsOptions, type ListedRows } from './rows-places';

/** The row that is to be seen; a new `tick` asks again. */
export interface Shown {
  readonly index: number;
  readonly tick: number;
}

interface Props extends ListedRows {
  readonly label: string;
  readonly show: Shown | null;
  readonly align: 'center' | 'auto';
  readonly className: string;
  readonly children: (index: number) => ReactNode;
}

/** A row is not shown under the line at the lower edge of the window, in pixels. */
const LOWER_EDGE = 96;

/** A region that scrolls must be reached by keyboard to be scrolled (WCAG 2.2, success criterion 2.1.1). */
const REACHABLE = { tabIndex: 0 } as const;

/** A long list in a window of its own: only the rows that are seen, and some around them, are drawn. */
export function RowsWindow(props: Props) {
  'use no memo';
  const { label, show, align, className } = props;
  const region = useRef<HTMLDivElement>(null);
  // eslint-disable-next-line react-hooks/incompatible-library -- this component is left uncompiled
  const rows = useVirtualizer({
    ...rowsOptions(props),
    getScrollElement: () => region.current,
  });
  useShown(show, (index) => rows.scrollToIndex(index, { align: alignOf(rows, index, align) }));
  return (
    <div
      ref={region}
      role="region"
      aria-label={label}
      data-rows-box
      className={`relative overflow-y-auto ${className}`}
      {...REACHABLE}
    >
      <Rows
        {...props}
        items={rows.getVirtualItems()}
        measure={rows.measureElement}
        above={0}
        total={rows.getTotalSize()}
      />
    </div>
  );
}

/** The same list as part of the page: where the page is narrow there is one thing to scroll and not two. */
export function RowsInPage(props: Omit<Props, 'className'>) {
  'use no memo';
  const { label, show, align } = props;
  const region = useRef<HTMLDivElement>(null);
  const above = usePlaceInPage(region);
  const rows = useWindowVirtualizer({
    ...rowsOptions(props),
    scrollMargin: above,
    scrollPaddingEnd: LOWER_EDGE,
  });
  // eslint-disable-next-line react-hooks/immutability -- the library takes this rule by assignment alone
  rows.shouldAdjustScrollPositionOnItemSizeChange = ({ start }, _, { scrollOffset }) =>
    movesWhatIsSeen(start, scrollOffset ?? 0, above + rows.getTotalSize());
  useShown(show, (index) =>
    rows.scrollToIndex(index, { align: alignOf(rows, index, align, LOWER_EDGE) }),
  );
  return (
    <div ref={region} role="region" aria-label={label}>
      <Rows
        {...props}
        items={rows.getVirtualItems()}
        measure={rows.measureElement}
        above={above}
        total={rows.getTotalSize()}
      />
    </div>
  );
}

/** How far an element stands below the page's beginning, whatever opens above it. */
function usePlaceInPage(region: React.RefObject<HTMLDivElement | null>): number {
  const [above, setAbove] = useState(0);
  useLayoutEffect(() => {
    const measure = () => {
      const top = region.current?.getBoundingClientRect().top ?? 0;
      setAbove(top + window.scrollY);
    };
    measure();
    const sizes = new ResizeObserver(measure);
    sizes.observe(document.body);
    return () => sizes.disconnect();
  }, [region]);
  return above;
}

/** Asks for a row whenever another is to be seen, or the same once more. */
function useShown(show: Shown | null, scrollTo: (index: number) => void): void {
  const scroll = useEffectEvent(scrollTo);
  const [index, tick] = [show?.index ?? -1, show?.tick];
  useEffect(() => {
    if (index >= 0) scroll(index);
  }, [tick, index]);
}

interface RowsProps extends Pick<Props, 'count' | 'children'> {
  readonly items: readonly VirtualItem[];
  readonly measure: (element: Element | null) => void;
  /** What stands above the list in what scrolls, in pixels. */
  readonly above: number;
  readonly total: number;
}

function Rows({ count, children, items, measure, above, total }: RowsProps) {
  'use no memo';
  return (
    <ol className="relative" style={{ height: total }}>
      {items.map(({ index, key, start }) => (
        <li
          key={key}
          ref={measure}
          data-index={index}
          aria-setsize={count}
          aria-posinset={index + 1}
          // By its place and not by a transform, which what is sticky within it would know nothing of.
          className="absolute inset-x-0"
          style={{ top: start - above }}
        >
          {children(index)}
        </li>
      ))}
    </ol>
  );
}
