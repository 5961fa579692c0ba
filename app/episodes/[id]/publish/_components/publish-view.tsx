import Link from 'next/link';
import { ButtonForm } from '../../../../_forms/button-form';
import { SlateHead } from '../../../../_ui/slate-head';
import { printDay } from '#lib/units/print-date';
import { isBroken } from '#lib/overview/said-standing';
import type { Description } from '#lib/publish/description';
import { printCount } from '#lib/units/print';
import { DayAnswerForm } from '../../_components/day-answer-form';
import { SaidList } from '../../_components/said-list';
import { WrittenStep } from '../../_components/written-step';
import { removeWebLink } from '../actions';
import { AllergenPart } from './allergen-part';
import { CopyAndLock } from './copy-and-lock';
import { LockPart } from './lock-part';
import { NumbersInIt } from './numbers-in-it';
import { TextsForm, WebLinkForm } from './texts-form';
import { StructuredPart } from './structured-part';
import { revOf, type PublishPage } from './view';

const TEXT = 'description-text';

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
        <StructuredPart episodeId={episode.id} data={page.structured} />
        <History page={page} />
      </div>
    </>
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

function DescriptionPart({ page }: { readonly page: PublishPage }) {
  const { text, length, limit, fits } = page.description;
  const { lock } = page;
  const used = `${printCount(length.codePoints)} of ${printCount(limit)}`;
  return (
    <section aria-labelledby="description" className="min-w-0">
      <h2 id="description">Description, as it will be pasted</h2>
      <div className="mt-3">
        <CopyAndLock
          episodeId={page.file.episode.id}
          text={text}
          shownIn={TEXT}
          label={`Copy, ${used}`}
        />
      </div>
      <WrittenStep episode={page.file.episode} rev={revOf(page, page.file.episode.id)} />
      <p className="mt-2">{lockWords(lock)}</p>
      <p className={`text-fine ${fits ? 'text-soft' : 'font-semibold text-hand'}`}>
        {fits ? '' : 'Too long: shorten a method or the hook. '}
        {lengthWords(length, limit)}
      </p>
      <pre
        id={TEXT}
        className="mt-4 border border-line bg-raised px-4 py-3 font-sans text-fine break-words whitespace-pre-wrap md:px-6 md:py-5 print:border-0 print:p-0"
      >
        {text}
      </pre>
    </section>
  );
}

/** `4,322 of 5,000 characters`; the count in UTF-16 units beside it where some counters count otherwise. */
function lengthWords(length: Description['length'], limit: number): string {
  const words = `${printCount(length.codePoints)} of ${printCount(limit)} characters`;
  if (length.utf16Units === length.codePoints) return `${words}.`;
  return `${words}, ${printCount(length.utf16Units)} as some counters count.`;
}

function lockWords(lock: PublishPage['lock']): string {
  if (!lock) return 'A draft: copying locks the numbers in it.';
  if (lock.broken === null) return `Numbers locked ${lock.at}, nothing under them has changed.`;
  return `Lock of ${lock.at} broken: ${lock.broken}. Copying locks the numbers again.`;
}

function InTheWay({ page }: { readonly page: PublishPage }) {
  const { chapterFaults, open, unconfirmedAllergens } = page.description;
  const isAllSaid = page.said.every((line) => line.change === null && !line.clashes);
  const episodeHref = `/episodes/${page.file.episode.id}`;
  return (
    <section aria-labelledby="in-the-way">
      <h2 id="in-the-way">Before you paste it</h2>
      {chapterFaults.length + open.length + unconfirmedAllergens.length === 0 && (
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
          The numbers you copied on {page.lock.at} are no longer these: {page.lock.broken}.
        </p>
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

function History({ page }: { readonly page: PublishPage }) {
  if (page.copied.length === 0) return null;
  return (
    <section aria-labelledby="copied" className="mt-10">
      <h2 id="copied">Copied so far</h2>
      <ul className="mt-2">
        {page.copied.map(({ id, at, text }) => (
          <li key={id} className="border-b border-line">
            <details>
              <summary className="link min-h-11 content-center">{at}</summary>
              <pre className="mb-3 border border-line bg-raised px-4 py-3 font-sans text-fine break-words whitespace-pre-wrap">
                {text}
              </pre>
            </details>
          </li>
        ))}
      </ul>
    </section>
  );
}
