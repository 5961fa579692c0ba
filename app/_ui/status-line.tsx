import type { ReactNode } from 'react';

interface Props {
  /** What was done or is going on, in one sentence; nothing while there is nothing to tell. */
  readonly children?: ReactNode;
  /** What can be done about it, as `Undo`. Stands outside what is read aloud. */
  readonly action?: ReactNode;
  /** `hand` where it waits for the person. */
  readonly tone?: 'usual' | 'hand';
}

/**
 * One line that tells what just happened. It stands in the page while it is empty too, so that words that
 * come later are read aloud; focus stays where it is.
 */
export function StatusLine({ children, action, tone = 'usual' }: Props) {
  const told = children !== undefined && children !== null && children !== false && children !== '';
  const edge = tone === 'hand' ? 'border-hand' : 'border-ink';
  const line = `flex flex-wrap items-center gap-x-5 gap-y-1 border-l-[6px] py-1.5 pl-3 ${edge}`;
  return (
    <div className={told ? `${line} mb-4 print:hidden` : ''}>
      <div role="status" className="min-w-0">
        {told && children}
      </div>
      {told && action}
    </div>
  );
}
