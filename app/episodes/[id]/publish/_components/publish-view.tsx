import Link from 'next/link';
import { ButtonForm } from '../../../../_forms/button-form';
import { SlateHead } from '../../../../_ui/slate-head';
import { printDay } from '#lib/units/print-date';
import { isBroken } from '#lib/overview/said-standing';
import { DayAnswerForm } from '../../_components/day-answer-form';
import { LastChange } from '../../_components/last-change';
import { SaidList } from '../../_components/said-list';
import { removeWebLink } from '../actions';
import { AllergenPart } from './allergen-part';
import { DescriptionPart } from './description-part';
import { HistoryPart } from './history-part';
import { LockPart } from './lock-part';
import { NumbersInIt } from './numbers-in-it';
import { PiecesPart } from './pieces-part';
import { TextsForm, WebLinkForm } from './texts-form';
import { PutRightNote } from './put-right';
import { StructuredPart } from './structured-part';
import { revOf, type PublishPage } from './view';

/** The description as it is pasted, what stands in its way, and the words that are the person's own. */
export function PublishView({ page }: { readonly page: PublishPage }) {
  const { episode } = page.file;
  const { lock } = page;
  const isShut = lock !== null && lock.broken === null && !page.said.some(isBroken);
  return (
    <>
      <SlateHead
        kind="Publish"
        title={episode.title}
        shut={isShut}
        cells={[
          { name: 'Publish', value: episode.publishOn ? printDay(episode.publishOn) : 'not set' },
          { name: 'Numbers', value: standingWord(page) },
        ]}
      />
      <div className="grid grid-cols-1 gap-x-12 gap-y-10 lg:grid-cols-[minmax(0,1.6fr)_minmax(0,1fr)]">
        <DescriptionPart page={page} />
        <div className="grid min-w-0 grid-cols-1 content-start gap-10 print:hidden">
          <InTheWay page={page} />
          <LockPart page={page} />
          <NumbersInIt page={page} />
          <ForThePicture episodeId={episode.id} />
          <Viewers episodeId={episode.id} />
          <section id="day-answer-part" aria-labelledby="whole-day">
            <h2 id="whole-day" className="mb-3">
              Is this the whole day?
            </h2>
            <DayAnswerForm
              episodeId={episode.id}
              rev={revOf(page, episode.id)}
              kind={episode.anythingElse?.kind ?? ''}
              what={episode.anythingElse?.kind === 'notCounted' ? episode.anythingElse.what : ''}
            />
          </section>
        </div>
      </div>
      <div className="print:hidden">
        <AllergenPart page={page} />
        <section aria-labelledby="own-words" className="mt-10 max-w-3xl">
          <h2 id="own-words" className="mb-3">
            Your own words
          </h2>
          <TextsForm
            episodeId={episode.id}
            rev={revOf(page, episode.id)}
            hook={episode.hook}
            disclosure={episode.disclosure}
          />
          <WebLinks page={page} />
        </section>
        <PiecesPart page={page} />
        <StructuredPart episodeId={episode.id} data={page.structured} />
        <HistoryPart copied={page.copied} />
      </div>
      <LastChange episodeId={episode.id} last={page.last} formOpen />
    </>
  );
}

/** What goes on the picture with the same numbers. */
function ForThePicture({ episodeId }: { readonly episodeId: string }) {
  return (
    <section aria-labelledby="for-the-picture">
      <h2 id="for-the-picture">On the picture</h2>
      <p className="mt-1">
        <Link
          className="link inline-flex min-h-8 items-center"
          href={`/episodes/${episodeId}/cards`}
        >
          Cards with these numbers
        </Link>
      </p>
    </section>
  );
}

/** What comes back from viewers, and where it is answered. */
function Viewers({ episodeId }: { readonly episodeId: string }) {
  const below = `/episodes/${episodeId}/publish`;
  return (
    <section aria-labelledby="viewers">
      <h2 id="viewers">Viewers ask</h2>
      <ul className="mt-1">
        <li>
          <Link className="link inline-flex min-h-8 items-center" href={`${below}/swaps`}>
            What if I swap it? Swaps
          </Link>
        </li>
        <li>
          <Link className="link inline-flex min-h-8 items-center" href={`${below}/replies`}>
            I get a different number
          </Link>
        </li>
      </ul>
    </section>
  );
}

function standingWord({ lock, said }: PublishPage): string {
  if (lock?.broken != null || said.some(isBroken)) return 'lock broken';
  return lock ? 'locked' : 'draft';
}

function InTheWay({ page }: { readonly page: PublishPage }) {
  const { chapterFaults, open, unconfirmedAllergens } = page.description;
  // What has a reason stands in the text with it.
  const apart = page.description.apart.filter(({ remark }) => remark.reason === null);
  const isAllSaid = page.said.every((line) => line.change === null && !line.clashes);
  const episodeHref = `/episodes/${page.file.episode.id}`;
  return (
    <section aria-labelledby="in-the-way">
      <h2 id="in-the-way">Before you paste it</h2>
      {chapterFaults.length + open.length + unconfirmedAllergens.length + apart.length === 0 && (
        <p className="mt-1 text-soft">Nothing is open: every number is known.</p>
      )}
      {page.said.length > 0 && (
        <>
          <h3 className="mt-3">Said in front of the camera</h3>
          {!isAllSaid && (
            <p className="mt-1">
              The text keeps to what was said as it stands, and marks with † what the ingredients no
              longer support.
            </p>
          )}
          <SaidList episodeId={page.file.episode.id} said={page.said} named />
        </>
      )}
      {page.lock?.broken != null && (
        <p className="mt-1 font-semibold text-hand">
          The numbers locked on {page.lock.at} are no longer those of now: {page.lock.broken}.{' '}
          {page.putRight?.isPublic !== true && (
            <a className="link" href="#numbers-lock">
              Lock again
            </a>
          )}
        </p>
      )}
      {page.putRight && <PutRightNote episodeId={page.file.episode.id} of={page.putRight} />}
      {page.changed.length > 0 && (
        <ul className="mt-1">
          {page.changed.map(({ segmentId, title, kind, words }) => (
            <li key={segmentId} className="hatch border-b border-line py-2">
              <b className="font-semibold">{title}</b>: {words}.{' '}
              {kind !== 'gone' && (
                <Link className="link" href={`${episodeHref}#row-${segmentId}`}>
                  To its ingredients
                </Link>
              )}
            </li>
          ))}
        </ul>
      )}
      {apart.length > 0 && (
        <>
          <h3 className="mt-3">Calories and macros apart</h3>
          <ul className="mt-1">
            {apart.map(({ segmentId, title, remark }) => (
              <li key={title} className="border-b border-line py-2">
                <b className="font-semibold">{title}</b>: {remark.words}{' '}
                {segmentId !== null && (
                  <Link className="link" href={`${episodeHref}#row-${segmentId}`}>
                    To its ingredients
                  </Link>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      {unconfirmedAllergens.length > 0 && (
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
      )}
      {open.length > 0 && (
        <>
          <h3 className="mt-3">Open numbers</h3>
          <ul className="mt-1">
            {open.map(({ segmentId, title, reason }) => (
              <li key={`${title} ${reason}`} className="hatch border-b border-line py-2">
                <b className="font-semibold">{title}</b>: {reason}.{' '}
                {segmentId === null ? (
                  <a className="link" href="#day-answer-part">
                    Answer it
                  </a>
                ) : (
                  <Link className="link" href={`${episodeHref}#row-${segmentId}`}>
                    To its ingredients
                  </Link>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      {chapterFaults.length > 0 && (
        <>
          <h3 className="mt-3">No chapters yet</h3>
          <ul className="mt-1 list-disc pl-5">
            {chapterFaults.map((fault) => (
              <li key={fault.message}>{fault.message}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function WebLinks({ page }: { readonly page: PublishPage }) {
  const { episode } = page.file;
  return (
    <div className="mt-6">
      <h3>Links</h3>
      <ul className="mt-1 mb-4">
        {episode.webLinks.map(({ id, label, url }) => (
          <li
            key={id}
            className="flex flex-wrap items-center justify-between gap-4 border-b border-line py-1"
          >
            <span className="min-w-0 break-words">
              {label}: {url}
            </span>
            <ButtonForm
              action={removeWebLink}
              values={{ episodeId: episode.id, linkId: id, rev: revOf(page, id) }}
              label={`Take out the link ${label}`}
            >
              Take out
            </ButtonForm>
          </li>
        ))}
      </ul>
      <WebLinkForm episodeId={episode.id} />
    </div>
  );
}
