import type { ReactNode } from 'react';
import { EditLink } from '../../_components/edit-link';
import { editHref, type DayPage } from './view';

interface Props {
  readonly page: DayPage;
  readonly id: string;
  readonly title: string;
  readonly note?: string;
  /** Whose work it is; no edge where that is no question. */
  readonly edge?: 'hand' | 'self';
  readonly plain?: boolean;
  /** Rows of its own, always drawn. */
  readonly below?: ReactNode;
  /** Its forms, drawn only while it is being edited. */
  readonly children: ReactNode;
}

const EDGES = {
  hand: 'border-l-[6px] border-l-hand pl-3',
  self: 'border-l-[6px] border-double border-l-self pl-3',
} as const;

/** A row of a list: what it says, and its form in its place while it is being edited. */
export function Row({ page, id, title, note, edge, plain = false, below, children }: Props) {
  const open = page.editing === id;
  return (
    <li id={`row-${id}`} className="border-b border-line py-2">
      <div className={edge ? EDGES[edge] : ''}>
        <div className="flex flex-wrap items-baseline justify-between gap-x-4">
          <span className={plain ? '' : 'font-semibold'}>{title}</span>
          {!open && <EditLink href={editHref(page, id)} what={title} />}
        </div>
        {note && <p className="text-fine text-soft">{note}</p>}
      </div>
      {open && <div className="my-3 border-[1.5px] border-ink bg-raised p-4">{children}</div>}
      {below}
    </li>
  );
}
