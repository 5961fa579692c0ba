import Link from 'next/link';
import type { ReactNode } from 'react';
import type { NamedRow } from '#lib/overview/named-rows';
import { ButtonForm } from '../../../../_forms/button-form';
import { answerNamed, askNamedAgain } from '../reading-actions';
import type { EditPage } from './view';

const ANSWERS = { leftOff: 'left off the plate', none: 'truly none' } as const;

/** Foods that are named and are in no ingredient: each is added, was left off the plate, or is truly none. */
export function NamedPart({ page }: { readonly page: EditPage }) {
  if (page.named.length === 0) return null;
  return (
    <section aria-labelledby="named" className="mt-10">
      <h2 id="named">Named, not counted</h2>
      <p className="mt-1 max-w-[70ch] text-soft">
        These foods are said, shown or written, and no ingredient has them. What is on the plate and
        not counted makes every number too low.
      </p>
      <dl className="mt-2 grid max-w-[70ch] gap-x-4 gap-y-1 text-fine print:hidden sm:grid-cols-[auto_minmax(0,1fr)]">
        <Meaning word="Add">It was eaten: it goes into the ingredients of its dish.</Meaning>
        <Meaning word="Left off the plate">It was bought, cooked or shown, and not eaten.</Meaning>
        <Meaning word="Truly none">
          Nothing is missing: it was only talked about, or an ingredient with another name is it.
        </Meaning>
      </dl>
      <ul className="mt-3 max-w-4xl">
        {page.named.map((row) => (
          <Named key={row.food} page={page} row={row} />
        ))}
      </ul>
    </section>
  );
}

/** What an answer says, so that it is known before it is pressed. */
function Meaning({ word, children }: { readonly word: string; readonly children: ReactNode }) {
  return (
    <div className="sm:contents">
      <dt className="font-semibold">{word}</dt>
      <dd className="text-soft">{children}</dd>
    </div>
  );
}

function Named({ page, row }: { readonly page: EditPage; readonly row: NamedRow }) {
  const { food, words, places, dishes, add, answer, answerId } = row;
  const { episodeId } = page;
  const rev = answerId === null ? '' : (page.revs[answerId] ?? 0);
  const values = { episodeId, food, namedId: answerId ?? '', rev };
  const other = (key: keyof typeof ANSWERS) => answer !== key;
  return (
    <li
      className={`flex flex-wrap items-center justify-between gap-x-6 gap-y-2 border-b border-line py-2.5 ${answer ? '' : 'hatch'}`}
    >
      <span className="min-w-0">
        <b className="font-semibold">{words}</b>
        {answer && <span>: {ANSWERS[answer]}</span>}
        <span className="block text-fine text-soft">
          {places.join(', ')}
          {dishes.length > 0 && ` · ${dishes.map(({ title }) => title).join(', ')}`}
        </span>
      </span>
      <span className="flex flex-wrap items-center gap-x-4 gap-y-2 print:hidden">
        {dishes.map(({ segmentId, title }) => (
          <Link
            key={segmentId}
            className="link inline-flex min-h-8 items-center"
            href={`/episodes/${episodeId}?to=${segmentId}&paste=${encodeURIComponent(add)}#row-${segmentId}`}
          >
            Add {words} to {title}
          </Link>
        ))}
        {dishes.length === 0 && (
          <Link className="link inline-flex min-h-8 items-center" href={`/episodes/${episodeId}`}>
            Add {words} to a dish
          </Link>
        )}
        {other('leftOff') && (
          <ButtonForm
            action={answerNamed}
            values={{ ...values, answer: 'leftOff' }}
            label={`${words}: left off the plate`}
            tone="plain"
          >
            Left off the plate
          </ButtonForm>
        )}
        {other('none') && (
          <ButtonForm
            action={answerNamed}
            values={{ ...values, answer: 'none' }}
            label={`${words}: truly none`}
            tone="plain"
          >
            Truly none
          </ButtonForm>
        )}
        {answerId !== null && (
          <ButtonForm
            action={askNamedAgain}
            values={{ episodeId, namedId: answerId, rev }}
            label={`Ask again about ${words}`}
          >
            Ask again
          </ButtonForm>
        )}
      </span>
    </li>
  );
}
