import { dishesOf } from '#lib/episode/context';
import { STANDING_WORDS } from '#lib/lock/lock-standing';
import { cardGroups } from '#lib/overview/cards-view';
import { STANDING_MARK } from '#lib/publish/cards/card';
import { toldLock } from '#lib/publish/lock-words';
import { ButtonLink } from '../../../../_ui/button';
import { EmptyState } from '../../../../_ui/empty-state';
import { SlateHead } from '../../../../_ui/slate-head';
import { LockLine } from '../../publish/_components/lock-line';
import { withLook } from '../look';
import type { ReadCards } from '../read-cards';
import { AllInOneZip } from './all-in-one-zip';
import { CardFigure } from './card-figure';
import { LookChoice } from './look-choice';
import { OpenCards } from './open-cards';

/** All cards of an episode, as they will look on the picture. */
export function CardsView({ cards }: { readonly cards: ReadCards }) {
  const { source, look, files, places } = cards;
  const { episode } = source.file;
  const mark = STANDING_MARK[source.standing];
  const here = `/episodes/${episode.id}/cards`;
  const dishes = dishesOf(episode.segments);
  const head = (
    <SlateHead
      kind="Cards"
      title={episode.title}
      shut={source.standing === 'locked'}
      cells={[{ name: 'Numbers', value: STANDING_WORDS[source.standing] }]}
    />
  );
  if (files.length === 0) {
    return (
      <>
        {head}
        <EmptyState
          title="No cards yet"
          action={<ButtonLink href={`/episodes/${episode.id}`}>To the running order</ButtonLink>}
        >
          Cards show the numbers of dishes. Add a dish with its ingredients, and its cards are here.
        </EmptyState>
      </>
    );
  }
  return (
    <>
      {head}
      <LockLine
        episodeId={episode.id}
        told={toldLock(source)}
        also={mark === null ? '' : `Each card says “${mark}”.`}
      />
      <OpenCards episodeId={episode.id} source={source} />
      <LookChoice here={here} look={look} />
      <section aria-labelledby="all-cards" className="mb-10 print:hidden">
        <h2 id="all-cards">All of them</h2>
        <p className="mt-1 max-w-[70ch] text-soft">
          PNG and SVG of each card, in running order, with the lists of where they go.
        </p>
        <AllInOneZip href={withLook(`${here}/cards.zip`, look)} progress={`${here}/progress`} />
        <p className="mt-3 flex flex-wrap gap-x-6 gap-y-1">
          <a className="link" href={withLook(`${here}/cards.vtt`, look)} download>
            Places as WebVTT
          </a>
          <a className="link" href={withLook(`${here}/cards.csv`, look)} download>
            Places as a table
          </a>
          {places.rate && (
            <a className="link" href={withLook(`${here}/cards.otio`, look)} download>
              Stills as an OpenTimelineIO track
            </a>
          )}
        </p>
      </section>
      {cardGroups(files, places, dishes, look.size).map((group) => (
        <section key={group.key} aria-labelledby={`cards-${group.key}`} className="mb-10">
          <h2 id={`cards-${group.key}`}>{group.title}</h2>
          <ul className="mt-3 grid grid-cols-1 gap-x-8 gap-y-8 md:grid-cols-2 xl:grid-cols-3">
            {group.cards.map((card) => (
              <CardFigure
                key={card.name}
                card={card}
                here={here}
                look={look}
                standing={source.standing}
              />
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}
