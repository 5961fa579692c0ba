'use client';

import { useEffect, useEffectEvent } from 'react';
import type { Sound } from '../_sound/use-sound';
import { RowsWindow } from './rows-window';
import { StatementRow } from './statement-row';
import type { EditPage, Row } from './view';

interface Props {
  readonly page: EditPage;
  readonly shown: readonly Row[];
  readonly chosen: string | null;
  readonly open: string | null;
  /** Counts how often a statement was chosen, and how often by key. */
  readonly tick: number;
  readonly byKey: number;
  readonly sound: Sound;
  readonly onChoose: (id: string) => void;
  readonly onOpen: (id: string) => void;
  readonly onStep: (by: 1 | -1) => void;
}

/** Frames in which a row that was far away is drawn. */
const FRAMES = 20;

/** All statements that are shown, one below the other; one of them may stand open. */
export function StatementList(props: Props) {
  const { shown, chosen, open, tick, byKey } = props;
  const at = shown.findIndex(({ id }) => id === chosen);
  const keep = shown.findIndex(({ id }) => id === open);
  const focusChosen = useEffectEvent(() => {
    const row = chosen === null ? null : document.getElementById(`said-${chosen}`);
    row?.focus();
    return row !== null || chosen === null;
  });
  // By each key once, wherever the rows are by then.
  useEffect(() => {
    if (byKey === 0) return;
    let left = FRAMES;
    let frame = 0;
    const focus = () => {
      left -= 1;
      if (!focusChosen() && left > 0) frame = requestAnimationFrame(focus);
    };
    frame = requestAnimationFrame(focus);
    return () => cancelAnimationFrame(frame);
  }, [byKey]);
  return (
    <RowsWindow
      label="Statements"
      count={shown.length}
      keyOf={(index) => shown[index]?.id ?? String(index)}
      estimate={58}
      show={at < 0 ? null : { index: at, tick }}
      align="auto"
      keep={keep}
      className="h-[36rem] lg:h-[min(48rem,80vh)]"
    >
      {(index) => {
        const row = shown[index];
        return row && <StatementRow key={row.id} {...props} row={row} />;
      }}
    </RowsWindow>
  );
}
