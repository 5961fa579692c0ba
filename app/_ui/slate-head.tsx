import type { ReactNode } from 'react';

export interface SlateCell {
  readonly name: string;
  readonly value: ReactNode;
}

interface Props {
  /** The line above the title: "Episode", "Filming day". */
  readonly kind: string;
  readonly title: string;
  readonly cells?: readonly SlateCell[];
  /** The upper stick stands open until the numbers are locked, and is shut from then on. */
  readonly shut?: boolean;
  readonly children?: ReactNode;
}

/** The dark slate at the head of a page: two sticks, the title, and a few cells of facts. */
export function SlateHead({ kind, title, cells = [], shut = true, children }: Props) {
  return (
    <header className="on-slate mb-6 bg-slate text-chalk md:mb-8 print:mb-4 print:border print:border-ink">
      <div aria-hidden="true" className="@container bg-paper print:hidden">
        <div className={`h-4 overflow-clip bg-slate text-chalk ${shut ? '' : 'stick-open mt-4'}`}>
          <div className="sticks h-full [--stripe:1.75rem]" />
        </div>
        <div className="sticks-back h-4 bg-slate text-chalk [--stripe:1.75rem]" />
      </div>
      <div className="flex flex-wrap">
        <div className="min-w-64 flex-[1_1_24rem] px-4 py-3 md:px-6 md:py-4 print:py-1.5">
          <p className="lettering text-fine text-chalk-soft uppercase">{kind}</p>
          <h1 className="mt-1 text-board">{title}</h1>
          {children}
        </div>
        {cells.length > 0 && (
          <dl
            className={`flex flex-wrap border-chalk-soft/40 max-md:grid max-md:w-full max-md:border-t ${cells.length === 3 ? 'max-md:grid-cols-3' : 'max-md:grid-cols-2'} ${cells.length < 3 ? 'print:w-auto print:border-t-0' : ''}`}
          >
            {cells.map(({ name, value }) => (
              <div
                key={name}
                className="border-chalk-soft/40 px-4 py-2.5 md:border-l md:px-6 md:py-4"
              >
                <dt className="lettering text-fine text-chalk-soft uppercase">{name}</dt>
                <dd className="mt-0.5 font-slate text-head font-semibold md:mt-1 md:text-title">
                  {value}
                </dd>
              </div>
            ))}
          </dl>
        )}
      </div>
    </header>
  );
}
