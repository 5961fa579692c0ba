import type { Judged } from '#lib/claims/judged';

/** What the working says of one statement, before it has a place among the rows. */
export type Verdicted = Pick<
  Judged,
  'verdict' | 'why' | 'difference' | 'sayInstead' | 'remark' | 'against'
>;

/**
 * Nothing can be said, and why.
 * @param cause what stands behind "can’t say: "
 * @example cannotSay('which dish?').why // 'can’t say: which dish?'
 */
export function cannotSay(
  cause: string,
  more: Partial<Pick<Verdicted, 'remark' | 'against'>> = {},
): Verdicted {
  return {
    verdict: 'unknown',
    why: `can’t say: ${cause}`,
    difference: null,
    sayInstead: null,
    remark: null,
    against: null,
    ...more,
  };
}

/** A verdict whose words are made when they are first read: where another number is only tried, nobody reads them. */
class Worded implements Verdicted {
  readonly #words: () => Verdicted;
  #made: Verdicted | null = null;

  constructor(
    readonly verdict: Verdicted['verdict'],
    words: () => Verdicted,
  ) {
    this.#words = words;
  }

  get plain(): Verdicted {
    return (this.#made ??= plainly(this.#words()));
  }
  get why() {
    return this.plain.why;
  }
  get difference() {
    return this.plain.difference;
  }
  get sayInstead() {
    return this.plain.sayInstead;
  }
  get remark() {
    return this.plain.remark;
  }
  get against() {
    return this.plain.against;
  }
}

/** A verdict that stands, with words that are made when they are first read. */
export function worded(verdict: Verdicted['verdict'], words: () => Verdicted): Verdicted {
  return new Worded(verdict, words);
}

/** The same as plain data. */
export function plainly(verdicted: Verdicted): Verdicted {
  return verdicted instanceof Worded ? verdicted.plain : verdicted;
}
