import type { CardView } from '#lib/overview/cards-view';
import { STANDING_WORDS, type LockStanding } from '#lib/lock/lock-standing';
import { withLook, type AskedCards } from '../look';

interface Props {
  readonly card: CardView;
  readonly here: string;
  readonly look: AskedCards;
  readonly standing: LockStanding;
}

/** One card over drawn footage, with where it goes and its files. */
export function CardFigure({ card, here, look, standing }: Props) {
  const address = (ending: string) => withLook(`${here}/${card.name}.${ending}`, look);
  return (
    <li className="min-w-0 break-inside-avoid">
      <figure>
        {/* All at once: on paper, a picture that waits to be scrolled to is blank. */}
        {/* eslint-disable-next-line @next/next/no-img-element */}
        <img
          src={`${address('svg')}&seen`}
          alt={card.words}
          width={card.width}
          height={card.height}
          loading="eager"
          decoding="async"
          className="h-auto w-full border border-line"
        />
        <figcaption className="mt-2">
          <span className="font-semibold">{card.title}</span>, {card.what}
          <span className="block text-fine text-soft">
            {STANDING_WORDS[standing]}
            {card.place === null ? '' : `; ${card.place}`}
          </span>
          {card.lost.length > 0 && (
            <span className="block text-fine text-hand">
              The letters of the cards lack {card.lost.map((run) => `“${run}”`).join(', ')}: left
              out. Write it in Latin letters to have it on the card.
            </span>
          )}
        </figcaption>
      </figure>
      <p className="mt-1 flex gap-5 print:hidden">
        <a className="link" href={address('png')} download aria-label={`PNG of ${card.name}`}>
          PNG
        </a>
        <a className="link" href={address('svg')} download aria-label={`SVG of ${card.name}`}>
          SVG
        </a>
      </p>
    </li>
  );
}
