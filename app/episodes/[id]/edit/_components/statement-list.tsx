'use client';

import { useEffect, useEffectEvent, useRef } from 'react';
import type { Sound } from '../_sound/use-sound';
import { RowsInPage, RowsWindow } from './rows-window';
import { StatementRow } from './statement-row';
import type { EditPage, Row } from './view';

interface Props {
  readonly page: EditPage;
  readonly shown: readonly Row[];
  readonly chosen: string | null;
  readonly open: string | null;
  /** The statement that was last chosen elsewhere; how often one was, and how often by key. */
  readonly asked: string | null;
  readonly tick: number;
  readonly byKey: number;
  readonly sound: Sound;
  /** Whether it is part of the page, and no window of its own in it. */
  readonly inPage: boolean;
  readonly onChoose: (id: string) => void;
  readonly onOpen: (id: string) => void;
  readonly onStep: (by: 1 | -1) => void;
}

/** Frames in which a row that was far away is drawn. */
const FRAMES = 20;
/** Frames after which a row that is drawn stands where it stays. */
const SETTLED = 4;

/** All statements that are shown, one below the other; one of them may stand open. */
export function StatementList(props: Props) {
  const { shown, open, asked, tick, byKey, inPage } = props;
  const at = shown.findIndex(({ id }) => id === asked);
  const keep = shown.findIndex(({ id }) => id === open);
  const showAsked = useEffectEvent((focus: boolean) => {
    const row = asked === null ? null : document.getElementById(`said-${asked}`);
    // By as little as it takes: the browser would bring what has the focus to the middle of the page.
    if (focus) row?.focus({ preventScroll: true });
    row?.scrollIntoView({ block: 'nearest' });
    return row !== null;
  });
  const focused = useRef(byKey);
  // Wherever the rows are by then: those before it may have to be measured first.
  useEffect(() => {
    if (tick === 0) return;
    let [left, seen] = [FRAMES, 0];
    let frame = 0;
    const show = () => {
      left -= 1;
      if (showAsked(focused.current !== byKey)) {
        focused.current = byKey;
        seen += 1;
      }
      if (left > 0 && seen < SETTLED) frame = requestAnimationFrame(show);
    };
    frame = requestAnimationFrame(show);
    return () => cancelAnimationFrame(frame);
  }, [tick, byKey]);
  const rows = {
    label: 'Statements',
    count: shown.length,
    keyOf: (index: number) => shown[index]?.id ?? String(index),
    estimate: inPage ? 86 : 58,
    show: at < 0 ? null : { index: at, tick },
    align: 'auto' as const,
    keep,
    children: (index: number) => {
      const row = shown[index];
      return row && <StatementRow key={row.id} {...props} row={row} />;
    },
  };
  return inPage ? (
    <RowsInPage {...rows} />
  ) : (
    <RowsWindow {...rows} className="h-[min(48rem,80vh)]" />
  );
}
