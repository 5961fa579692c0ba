import type { ReactNode } from 'react';

/** One element as it is shown on the page of the look. */
export interface Specimen {
  readonly name: string;
  /** When to use it, in one sentence. */
  readonly when: string;
  /** It is printed too, and shown on white. */
  readonly paper?: boolean;
  /** Draws it; `key` makes its ids unique, since it is drawn once for each theme. */
  readonly show: (key: string) => ReactNode;
}

/** An element by day, at night and, where it is printed, on paper, with its name and use. */
export function SpecimenRow({ specimen }: { readonly specimen: Specimen }) {
  const { name, when, show, paper = false } = specimen;
  const id = name.toLowerCase().replaceAll(/[^a-z]+/g, '-');
  const themes = paper ? (['day', 'night', 'print'] as const) : (['day', 'night'] as const);
  return (
    <section aria-labelledby={`look-${id}`} className="border-t border-line py-6">
      <h3 id={`look-${id}`}>{name}</h3>
      <p className="mt-1 mb-3 max-w-[70ch] text-soft">{when}</p>
      <div className="grid items-stretch gap-4 lg:grid-cols-2">
        {themes.map((theme) => (
          <div
            key={theme}
            data-theme={theme}
            className="min-w-0 border border-edge bg-paper p-4 text-ink md:p-6"
          >
            <p className="lettering mb-3 text-fine text-soft">{theme}</p>
            {show(`${id}-${theme}`)}
          </div>
        ))}
      </div>
    </section>
  );
}
