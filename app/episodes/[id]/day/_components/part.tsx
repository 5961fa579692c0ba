import type { ReactNode } from 'react';
import { ButtonLink } from '../../../../_ui/button';
import { editHref, type DayPage } from './view';

interface PartProps {
  readonly title: string;
  /** Said where there are no rows. */
  readonly empty: string;
  /** Folded away behind its title unless this is true; without it, it always stands open. */
  readonly open?: boolean;
  readonly children: readonly [readonly ReactNode[], ReactNode];
}

/** A list of a segment's rows, and how to add to it. */
export function Part({ title, empty, open, children }: PartProps) {
  const [rows, add] = children;
  const list = (
    <>
      {rows.length === 0 ? <p className="mt-1 text-soft">{empty}</p> : <ul>{rows}</ul>}
      {add}
    </>
  );
  if (open === undefined) {
    return (
      <div className="mt-3 mb-6">
        <h3>{title}</h3>
        {list}
      </div>
    );
  }
  return (
    <details open={open} className="border-t border-line pb-2">
      <summary className="min-h-14 content-center">
        <h3 className="inline">{title}</h3>{' '}
        <span className="text-soft">{rows.length === 0 ? 'none yet' : rows.length}</span>
      </summary>
      <div className="mb-4">{list}</div>
    </details>
  );
}

interface AddingProps {
  readonly page: DayPage;
  /** Name of the row that is not there yet. */
  readonly row: string;
  readonly words: string;
  /** What it is added to. */
  readonly to: string;
  readonly heading?: 'h2' | 'h4';
  readonly children: ReactNode;
}

/** Leads to the form of a new row, and holds that form while it is open. */
export function Adding({ page, row, words, to, heading = 'h4', children }: AddingProps) {
  const Heading = heading;
  return (
    <div id={`row-${row}`} className="mt-2">
      {page.editing === row ? (
        <div className="border-[1.5px] border-ink bg-raised p-4">
          <Heading className="mb-3 font-slate text-head font-semibold">
            {words}: {to}
          </Heading>
          {children}
        </div>
      ) : (
        <ButtonLink href={editHref(page, row)}>
          {words}
          <span className="unseen"> to {to}</span>
        </ButtonLink>
      )}
    </div>
  );
}
