import type { ReactNode } from 'react';

interface Props {
  readonly title: string;
  /** What to do first, in one or two sentences. */
  readonly children: ReactNode;
  readonly action?: ReactNode;
}

/** A place where nothing is yet: hatched like anything open, with the way to begin. */
export function EmptyState({ title, children, action }: Props) {
  return (
    <div className="border-y border-line">
      <div aria-hidden="true" className="hatch h-3" />
      <div className="max-w-[60ch] py-5">
        <p className="font-slate text-head font-semibold">{title}</p>
        <p className="mt-1 text-soft">{children}</p>
        {action && <div className="mt-4 flex flex-wrap gap-3">{action}</div>}
      </div>
    </div>
  );
}
