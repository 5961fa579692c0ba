import Link from 'next/link';
import { ButtonForm } from '../../../../_forms/button-form';
import { SlateHead } from '../../../../_ui/slate-head';
import { STANDING_WORDS } from '#lib/lock/lock-standing';
import { printDay } from '#lib/units/print-date';
import { isBroken } from '#lib/overview/said-standing';
import { DayAnswerForm } from '../../_components/day-answer-form';
import { LastChange } from '../../_components/last-change';
import { removeWebLink } from '../actions';
import { AllergenPart } from './allergen-part';
import { DescriptionPart } from './description-part';
import { HistoryPart } from './history-part';
import { InTheWay } from './in-the-way';
import { LockPart } from './lock-part';
import { NumbersInIt } from './numbers-in-it';
import { PiecesPart } from './pieces-part';
import { TextsForm, WebLinkForm } from './texts-form';
import { StructuredPart } from './structured-part';
import { revOf, toldOf, type PublishPage } from './view';

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
          <WithTheVideo episodeId={episode.id} />
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

/** What goes up with the video, with the same numbers. */
function WithTheVideo({ episodeId }: { readonly episodeId: string }) {
  const here = `/episodes/${episodeId}`;
  return (
    <section aria-labelledby="with-the-video">
      <h2 id="with-the-video">With the video</h2>
      <ul className="mt-1">
        <li>
          <Link className="link inline-flex min-h-8 items-center" href={`${here}/publish/captions`}>
            Captions, with corrections that you accept
          </Link>
        </li>
        <li>
          <Link className="link inline-flex min-h-8 items-center" href={`${here}/edit/timeline`}>
            Chapters and times in the cut
          </Link>
        </li>
        <li>
          <Link className="link inline-flex min-h-8 items-center" href={`${here}/cards`}>
            Cards with these numbers
          </Link>
        </li>
      </ul>
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

function standingWord(page: PublishPage): string {
  return STANDING_WORDS[page.said.some(isBroken) ? 'broken' : toldOf(page).standing];
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
