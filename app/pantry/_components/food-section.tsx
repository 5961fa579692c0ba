import type { ReactNode } from 'react';

interface Props {
  readonly id: string;
  readonly title: string;
  readonly children: ReactNode;
}

/** A part of a food's page under its heading. */
export function FoodSection({ id, title, children }: Props) {
  return (
    <section aria-labelledby={id}>
      <h2 id={id} className="mb-2">
        {title}
      </h2>
      {children}
    </section>
  );
}
