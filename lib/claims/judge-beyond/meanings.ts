import { holdAgainst, type LikelyRange, type SaidInterval } from '#lib/claims/said-interval';
import { cannotSay, plainly, worded, type Verdicted } from '#lib/claims/judge/verdicted';
import type { HeldAgainst } from '#lib/claims/judged';
import { settled } from '#lib/units/print';

/** One thing that a statement may be about, and what that says of it. */
export interface Meaning {
  readonly verdict: 'agrees' | 'edge' | 'off';
  readonly why: string;
  readonly difference: string | null;
  readonly sayInstead: string | null;
  readonly against: HeldAgainst;
  /** How far the number is from it, to tell the nearest of several; 0 where it is not off. */
  readonly apart: number;
  /** What it is called where one of several has to be chosen: “Bake the pie: 25 minutes”. */
  readonly called: string;
}

/** What a statement was held against, in words. */
export interface Told {
  /** What the working says: “your step “Bake” takes 25 minutes”. */
  readonly why: string;
  readonly called: string;
  readonly sayInstead: string;
  /** A distance in words, with the side on which the number lies. */
  readonly apart: (distance: number, above: boolean) => string;
  readonly against: HeldAgainst;
}

/** A meaning whose words are made when they are first read. */
class Held implements Meaning {
  readonly #telling: () => Told;
  readonly #from: ReturnType<typeof distanceFrom> | null;
  #told: Told | null = null;

  constructor(
    readonly verdict: Meaning['verdict'],
    telling: () => Told,
    from: ReturnType<typeof distanceFrom> | null,
  ) {
    this.#telling = telling;
    this.#from = from;
  }

  get #words(): Told {
    return (this.#told ??= this.#telling());
  }
  get why() {
    return this.#words.why;
  }
  get called() {
    return this.#words.called;
  }
  get against() {
    return this.#words.against;
  }
  get sayInstead() {
    return this.#from && this.#words.sayInstead;
  }
  get apart() {
    return this.#from?.distance ?? 0;
  }
  get difference() {
    const { distance, above } = this.#from ?? { distance: 0, above: false };
    return distance === 0 ? null : this.#words.apart(distance, above);
  }
}

/**
 * A statement held against a range that is known.
 * @param number what was said, in the unit of the range
 * @param telling its words, which are made where somebody reads them
 */
export function meaningOf(
  said: SaidInterval,
  number: { readonly low: number; readonly high: number },
  range: LikelyRange,
  telling: () => Told,
  verdict: Meaning['verdict'] = holdAgainst(said, range),
): Meaning {
  return new Held(verdict, telling, verdict === 'off' ? distanceFrom(number, range.value) : null);
}

/** How far a number that was said, or the nearer end of a range, is from a value, and on which side. */
function distanceFrom(
  { low, high }: { readonly low: number; readonly high: number },
  value: number,
): { readonly distance: number; readonly above: boolean } {
  if (value < low) return { distance: settled(low - value), above: true };
  if (value > high) return { distance: settled(value - high), above: false };
  return { distance: 0, above: false };
}

/**
 * What is said of a statement that may be about several things. It agrees only if it does whichever is meant, and is off
 * only if it is off whichever is meant; between these nobody can say.
 * @param which the question that would settle it, as in “which step?”
 */
export function settle(meanings: readonly Meaning[], which: string): Verdicted {
  const [first] = meanings;
  if (!first) return cannotSay(which);
  const off = meanings.filter(({ verdict }) => verdict === 'off');
  if (off.length === 0) {
    const edge = meanings.find(({ verdict }) => verdict === 'edge');
    return verdicted(edge ?? first);
  }
  if (off.length < meanings.length) {
    return worded('unknown', () => {
      const calls = [...new Set(meanings.map(({ called }) => called))];
      return cannotSay(`${which} ${calls.join('; ')}`, { remark: 'toConfirm' });
    });
  }
  return worded('off', () => allOff(off));
}

function allOff(off: readonly Meaning[]): Verdicted {
  const nearest = off.reduce((best, each) => (each.apart < best.apart ? each : best));
  const others = off.filter(({ called }) => called !== nearest.called);
  if (others.length === 0) return verdicted(nearest);
  const rest = [...new Set(others.map(({ called }) => called))].join('; ');
  return {
    ...plainly(verdicted(nearest)),
    why: `${nearest.why}; nor does it fit ${rest}`,
    sayInstead: null,
  };
}

function verdicted(meaning: Meaning): Verdicted {
  return worded(meaning.verdict, () => {
    const { verdict, why, difference, sayInstead, against } = meaning;
    return { verdict, why, difference, sayInstead, against, remark: null };
  });
}
