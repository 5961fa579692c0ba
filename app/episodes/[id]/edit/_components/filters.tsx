'use client';

import type { Standing } from '#lib/overview/said-rows';
import { SmallMark } from './standing-mark';
import { STANDING_WORDS, STANDINGS, type EditPage } from './view';

interface Props {
  readonly page: EditPage;
  readonly filter: Standing | null;
  readonly onFilter: (filter: Standing | null) => void;
}

const BUTTON =
  'inline-flex min-h-10 items-center gap-1.5 border-[1.5px] border-edge bg-raised px-2.5 font-slate font-semibold aria-pressed:border-ink aria-pressed:bg-ink aria-pressed:text-paper';

/** Which statements are shown, by how they stand; what is told apart below leads there. */
export function Filters({ page, filter, onFilter }: Props) {
  const { counts, contradictions, named } = page;
  return (
    <div role="group" aria-label="Show" className="mb-3 flex flex-wrap gap-2">
      <button
        type="button"
        aria-pressed={filter === null}
        className={BUTTON}
        onClick={() => onFilter(null)}
      >
        all {counts.all}
      </button>
      {STANDINGS.filter((standing) => counts[standing] > 0 || filter === standing).map(
        (standing) => (
          <button
            key={standing}
            type="button"
            aria-pressed={filter === standing}
            className={BUTTON}
            onClick={() => onFilter(filter === standing ? null : standing)}
          >
            <SmallMark standing={standing} />
            {STANDING_WORDS[standing]} {counts[standing]}
          </button>
        ),
      )}
      {contradictions.length > 0 && (
        <a href="#contradictions" className={BUTTON}>
          contradictions {contradictions.length}
        </a>
      )}
      {named.length > 0 && (
        <a href="#named" className={BUTTON}>
          named, not counted {named.length}
        </a>
      )}
    </div>
  );
}
