import Link from 'next/link';
import type { ReactNode } from 'react';
import { lockWords } from '#lib/publish/lock-words';
import { SaidList } from '../../_components/said-list';
import { LOCK_ID } from '../lock-href';
import { Promises } from './promises';
import { PutRightNote } from './put-right';
import { toldOf, type PublishPage } from './view';

type PageProps = { readonly page: PublishPage };

/** All that is to be known or done before the text is pasted; where there is nothing, that. */
export function InTheWay({ page }: PageProps) {
  return (
    <section aria-labelledby="in-the-way">
      <h2 id="in-the-way">Before you paste it</h2>
      {isClear(page) && <p className="mt-1 text-soft">Nothing is open: every number is known.</p>}
      {!page.description.fits && (
        <p className="hatch mt-1 border-b border-line py-2">
          The text is longer than its limit.{' '}
          <a className="link" href="#description">
            Leave something out
          </a>
        </p>
      )}
      <Promises episodeId={page.file.episode.id} promises={page.promises} />
      <Said page={page} />
      <Broken page={page} />
      <Apart page={page} />
      <Allergens page={page} />
      <OpenNumbers page={page} />
      <Chapters page={page} />
    </section>
  );
}

/** Nothing is open, too long, promised and not held, changed under its lock or under what was said, or to be put right. */
function isClear(page: PublishPage): boolean {
  const { chapterFaults, open, unconfirmedAllergens, fits } = page.description;
  const own = [unexplained(page), page.changed, page.promises];
  const lists = [chapterFaults, open, unconfirmedAllergens, ...own];
  return (
    lists.every((list) => list.length === 0) &&
    fits &&
    toldOf(page).standing !== 'broken' &&
    page.putRight === null &&
    isAllSaid(page)
  );
}

/** Calories and macros that are apart without a reason: what has one needs nobody. */
const unexplained = ({ description }: PublishPage) =>
  description.apart.filter(({ remark }) => remark.reason === null);

const isAllSaid = ({ said }: PublishPage) =>
  said.every((line) => line.change === null && !line.clashes);

function Said({ page }: PageProps) {
  if (page.said.length === 0) return null;
  return (
    <>
      <h3 className="mt-3">Said in front of the camera</h3>
      {!isAllSaid(page) && (
        <p className="mt-1">
          The text keeps to what was said as it stands, and marks with † what the ingredients no
          longer support.
        </p>
      )}
      <SaidList episodeId={page.file.episode.id} said={page.said} named />
    </>
  );
}

/** What broke the lock, and what of it viewers know. */
function Broken({ page }: PageProps) {
  const { changed, putRight, file } = page;
  const told = toldOf(page);
  return (
    <>
      {told.standing === 'broken' && (
        <p className="mt-1 font-semibold text-hand">
          {lockWords(told)}{' '}
          {putRight?.isPublic !== true && (
            <a className="link" href={`#${LOCK_ID}`}>
              Lock again
            </a>
          )}
        </p>
      )}
      {putRight && <PutRightNote episodeId={file.episode.id} of={putRight} />}
      {changed.length > 0 && (
        <ul className="mt-1">
          {changed.map(({ segmentId, title, kind, words }) => (
            <Hatched key={segmentId} title={title} words={`${words}.`}>
              {kind !== 'gone' && <ToIngredients page={page} segmentId={segmentId} />}
            </Hatched>
          ))}
        </ul>
      )}
    </>
  );
}

/** What viewers may ask about: the text says nothing of it. */
function Apart({ page }: PageProps) {
  const { apart } = page.description;
  if (apart.length === 0) return null;
  return (
    <>
      <h3 className="mt-3">Calories and macros apart</h3>
      <p className="mt-1 max-w-[60ch] text-soft">
        For you, not in the text: who multiplies your macros by 4, 9 and 4 gets another number.
      </p>
      <ul className="mt-1">
        {apart.map(({ segmentId, title, remark }) => (
          <li key={title} className="border-b border-line py-2">
            <b className="font-semibold">{title}</b>: {remark.words}{' '}
            {segmentId !== null && <ToIngredients page={page} segmentId={segmentId} />}
          </li>
        ))}
      </ul>
    </>
  );
}

function Allergens({ page }: PageProps) {
  const { unconfirmedAllergens } = page.description;
  if (unconfirmedAllergens.length === 0) return null;
  return (
    <>
      <h3 className="mt-3">Allergens not checked yet</h3>
      <p className="hatch border-b border-line py-2">
        Not in the text until you say so:{' '}
        {unconfirmedAllergens
          .map(({ words, foods }) => `${words} (${foods.join(', ')})`)
          .join('; ')}
        .{' '}
        <a className="link" href="#allergens">
          Answer them
        </a>
      </p>
    </>
  );
}

function OpenNumbers({ page }: PageProps) {
  const { open } = page.description;
  if (open.length === 0) return null;
  return (
    <>
      <h3 className="mt-3">Open numbers</h3>
      <ul className="mt-1">
        {open.map(({ segmentId, title, reason }) => (
          <Hatched key={`${title} ${reason}`} title={title} words={`${reason}.`}>
            {segmentId === null ? (
              <a className="link" href="#day-answer-part">
                Answer it
              </a>
            ) : (
              <ToIngredients page={page} segmentId={segmentId} />
            )}
          </Hatched>
        ))}
      </ul>
    </>
  );
}

function Chapters({ page }: PageProps) {
  const { chapterFaults } = page.description;
  if (chapterFaults.length === 0) return null;
  return (
    <>
      <h3 className="mt-3">No chapters yet</h3>
      <ul className="mt-1 list-disc pl-5">
        {chapterFaults.map((fault) => (
          <li key={fault.message}>{fault.message}</li>
        ))}
      </ul>
      <p className="mt-1">
        <Link
          className="link inline-flex min-h-8 items-center"
          href={`/episodes/${page.file.episode.id}/edit/timeline`}
        >
          Set the times in the cut
        </Link>
      </p>
    </>
  );
}

interface HatchedProps {
  readonly title: string;
  readonly words: string;
  readonly children: ReactNode;
}

function Hatched({ title, words, children }: HatchedProps) {
  return (
    <li className="hatch border-b border-line py-2">
      <b className="font-semibold">{title}</b>: {words} {children}
    </li>
  );
}

function ToIngredients({ page, segmentId }: PageProps & { readonly segmentId: string }) {
  return (
    <Link className="link" href={`/episodes/${page.file.episode.id}#row-${segmentId}`}>
      To its ingredients
    </Link>
  );
}
