'use client';

import { keepInPlace } from './keep-in-place';
import { StandingMark } from './standing-mark';
import type { Sound } from '../_sound/use-sound';
import { Statement } from './statement';
import type { EditPage, Row } from './view';

interface Props {
  readonly page: EditPage;
  readonly row: Row;
  readonly chosen: string | null;
  readonly open: string | null;
  readonly sound: Sound;
  readonly onOpen: (id: string) => void;
  readonly onStep: (by: 1 | -1) => void;
}

/** One statement on a line: where, what, and how it stands. Pressed, it opens, and its line stays in view. */
export function StatementRow({ page, row, chosen, open, sound, onOpen, onStep }: Props) {
  const isOpen = row.id === open;
  const here = row.id === chosen;
  return (
    <div
      className={`border-b border-line ${here ? 'border-l-[6px] border-l-ink bg-raised' : 'pl-[6px]'}`}
    >
      <button
        type="button"
        id={`said-${row.id}`}
        aria-expanded={isOpen}
        aria-current={here || undefined}
        className={`grid min-h-14 w-full scroll-mb-24 grid-cols-[4.5rem_minmax(0,1fr)] items-center gap-x-3 px-2 py-1.5 text-left hover:bg-raised focus-visible:-outline-offset-2 md:grid-cols-[4.5rem_minmax(0,1fr)_17.5rem] ${isOpen ? 'sticky top-0 z-[1] border-b border-line bg-raised' : ''}`}
        onClick={(event) => {
          keepInPlace(event.currentTarget);
          onOpen(row.id);
        }}
        onKeyDown={(event) => {
          if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
          event.preventDefault();
          onStep(event.key === 'ArrowDown' ? 1 : -1);
        }}
      >
        <span className="text-fine text-soft wrap-anywhere">{row.place}</span>
        <span className="min-w-0 wrap-anywhere">“{row.words}”</span>
        <span className="max-md:col-start-2">
          <StandingMark row={row} />
        </span>
      </button>
      {isOpen && <Statement page={page} row={row} sound={sound} />}
    </div>
  );
}
