/** Inks and grounds of cards, by their roles. */
export interface CardColours {
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  readonly hand: string;
  readonly line: string;
  readonly slate: string;
  readonly chalk: string;
  readonly chalkSoft: string;
  /** Grease-pencil red that is read on the slate and on dark footage. */
  readonly handOnDark: string;
  /** About letters on the picture itself: so dark that red letters stand out of any grey by it or by themselves. */
  readonly edge: string;
}

/** `plate`: on paper and slate that nearly hide the picture; `outline`: on the picture itself, each letter with an edge. */
export const CARD_GROUNDS = ['plate', 'outline'] as const;
export type CardGround = (typeof CARD_GROUNDS)[number];

/**
 * How much a plate hides of the picture under it: so much that every ink keeps WCAG's 4.5 : 1 over black and over white
 * footage, and over all between.
 */
export const PLATE_OPACITY = 0.94;

/** The edge of a letter on both sides together, as a part of its size, and its least and most in units of layout. */
export const EDGE = { share: 0.16, least: 7, most: 22 } as const;

/** The inks of one part of a card. */
export interface PartInks {
  /** What it stands on; null on the picture itself. */
  readonly ground: string | null;
  readonly ink: string;
  readonly soft: string;
  /** For what waits for the person. */
  readonly hand: string;
  readonly line: string;
  /** The edge about letters and lines; null on a ground. */
  readonly edge: string | null;
}

/** The inks of a card's head and of its body. */
export interface CardInks {
  readonly head: PartInks;
  readonly body: PartInks;
}

/** The inks of a ground. On the picture all is chalk with a dark edge: one of the two is read on any footage. */
export function cardInks(ground: CardGround, colours: CardColours): CardInks {
  const { chalk, chalkSoft, handOnDark, slate, paper, ink, soft, hand, line, edge } = colours;
  if (ground === 'outline') {
    const part = {
      ...{ ground: null, ink: chalk, soft: chalk, hand: handOnDark, line: chalk, edge },
    };
    return { head: part, body: part };
  }
  return {
    head: {
      ...{ ground: slate, ink: chalk, soft: chalkSoft, hand: handOnDark, line: chalk },
      edge: null,
    },
    body: { ground: paper, ink, soft, hand, line, edge: null },
  };
}
