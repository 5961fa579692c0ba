'use client';

import { CopyButton } from '../../../../_ui/copy-button';
import type { Row } from './view';

/** What can be done in the edit about words that are off: a card, a cut, the sentence said again. */
export function WaysPart({ row }: { readonly row: Row }) {
  const { card, cut, sentence } = row.ways;
  if (!card && !cut && !sentence) return null;
  return (
    <div>
      <h4 className="lettering text-fine text-soft">Ways to mend it</h4>
      <dl className="mt-1 grid gap-3">
        {card && (
          <Way name="A correction card" id={`card-${row.id}`} words={card.words}>
            from {card.from} to {card.to}
          </Way>
        )}
        {sentence && (
          <Way
            name={row.startMs === null ? 'Write instead' : 'Say the sentence again'}
            id={`sentence-${row.id}`}
            words={sentence.words}
          >
            {row.startMs !== null &&
              `about ${sentence.seconds} s to say; what was said takes ${sentence.wasS} s`}
          </Way>
        )}
        {cut && (
          <div>
            <dt className="font-semibold">A cut</dt>
            <dd>
              from {cut.from} to {cut.to}
            </dd>
          </div>
        )}
      </dl>
    </div>
  );
}

function Way({
  name,
  id,
  words,
  children,
}: {
  readonly name: string;
  readonly id: string;
  readonly words: string;
  readonly children: React.ReactNode;
}) {
  return (
    <div>
      <dt className="font-semibold">{name}</dt>
      <dd>
        <p id={id} className="max-w-[65ch]">
          {words}
        </p>
        <p className="flex flex-wrap items-center gap-x-4 gap-y-1 text-fine text-soft">
          {children}
          <CopyButton text={words} label="Copy" shownIn={id} tone="bare" />
        </p>
      </dd>
    </div>
  );
}
