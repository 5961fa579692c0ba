import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import { printFigure } from '#lib/figures/print-figure';
import {
  confirmedOnly,
  figuresFor,
  publishedNumbers,
  publishedStep,
  type NumberScope,
  type PublishedNumber,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { spokenNumbers } from '#lib/figures/spoken-numbers';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import {
  lockDifference,
  type InputChange,
  type NumberChange,
  type NumberThen,
} from '#lib/lock/lock-difference';
import { readSnapshot, type LockedSnapshot } from '#lib/lock/locked-snapshot';

/** A number that went out and is another one now. */
export interface CorrectedNumber {
  readonly scope: NumberScope;
  /** The dish's title; null for all dishes together. */
  readonly dish: string | null;
  /** "the whole dish", a portion's name, "the day". */
  readonly part: string;
  readonly nutrient: Nutrient;
  readonly label: string;
  readonly unit: string;
  readonly from: NumberThen;
  /** Null where nothing is published of it any more. */
  readonly to: NumberThen | null;
  /** It was said in the video, where nothing can be changed. */
  readonly spoken: boolean;
}

/** What there is to correct of what went out with a lock. */
export interface CorrectionNeeded {
  /**
   * `none`: nothing has changed under it. `rangesOnly`: inputs or ranges have, and no published number is another one. `numbers`: some are. `unread`: the lock cannot be read, so nobody can say.
   */
  readonly kind: 'none' | 'rangesOnly' | 'numbers' | 'unread';
  readonly numbers: readonly CorrectedNumber[];
  /** Published numbers that are written alike, with another range. */
  readonly ranges: readonly NumberChange[];
  /** Published numbers that are written otherwise only so that they add up: what they are of is what it was. */
  readonly sums: readonly NumberChange[];
  readonly inputs: readonly InputChange[];
  /** The calculation itself is another version's. */
  readonly otherEngine: boolean;
}

/** What numbers are now. */
export interface NumbersNow {
  readonly file: EpisodeFile;
  readonly figures: EpisodeFigures;
}

const NOTHING: CorrectionNeeded = {
  ...{ kind: 'none', numbers: [], ranges: [], sums: [], inputs: [], otherEngine: false },
};

/**
 * What of the numbers that went out with a lock is written otherwise now: energy and macros of each dish, its portions,
 * 100 g of it and all dishes together, and what was said in front of the camera and is no longer covered. The layout is
 * not asked: a lock keeps none, and the one of today says nothing of what went out. A number that never went out, since
 * its dish is new or its food was not confirmed, is none of it.
 * @param snapshot canonical JSON of the lock that the published texts rest on, as `takeLock` made it
 * @example correctionNeeded(takeLock(file).snapshot, { file, figures }).kind // 'none'
 */
export function correctionNeeded(snapshot: string, now: NumbersNow): CorrectionNeeded {
  const locked = readSnapshot(snapshot);
  const difference = lockDifference(snapshot, now.file, now.figures);
  if (difference.holds) return NOTHING;
  const { inputs, otherEngine } = difference;
  if (!locked?.file) return { ...NOTHING, kind: 'unread', inputs, otherEngine };
  const then = confirmedOnly(publishedNumbers(locked.file, locked.figures));
  const since = confirmedOnly(publishedNumbers(now.file, now.figures));
  const published = difference.numbers.filter((each) =>
    isPublished(each, locked.figures, now.file),
  );
  const ranges = published.filter(({ rangeOnly }) => rangeOnly);
  const sums = published.filter(({ sumOnly }) => sumOnly);
  const written = published
    .filter(({ rangeOnly, sumOnly }) => !rangeOnly && !sumOnly)
    .flatMap((each) => corrected(each, { locked, then, now, since }));
  const said = spokenOnly({ locked, then, now, since }, published);
  const all = [...written, ...said.filter((each) => !written.some(isSameAs(each)))];
  const numbers = inOrderOf(difference.numbers, all);
  const kind = numbers.length > 0 ? 'numbers' : 'rangesOnly';
  return { kind, numbers, ranges, sums, inputs, otherEngine };
}

interface BothSides {
  readonly locked: LockedSnapshot;
  readonly then: PublishedNumbers;
  readonly now: NumbersNow;
  readonly since: PublishedNumbers;
}

/** Whether a description says it: energy and macros, with kilojoules in the EU; the day where it is more than one dish. */
function isPublished(
  { nutrient, scope }: NumberChange,
  { dishes, dayIsWhole }: EpisodeFigures,
  { episode }: EpisodeFile,
): boolean {
  if (scope.kind === 'day' && dishes.length < 2 && !dayIsWhole) return false;
  if (nutrient === 'energyKj') return episode.region === 'EU';
  return HEADLINE_NUTRIENTS.some((each) => each === nutrient);
}

/** As a line of numbers is written: kilojoules, calories, protein, fat, carbohydrate. */
function rankOf(nutrient: Nutrient): number {
  return HEADLINE_NUTRIENTS.findIndex((each) => each === nutrient);
}

/** Amount by amount, in the order in which the lock's difference tells them. */
function inOrderOf(
  changes: readonly NumberChange[],
  numbers: readonly CorrectedNumber[],
): readonly CorrectedNumber[] {
  const scopes = [...new Set(changes.map(({ scope }) => JSON.stringify(scope)))];
  const place = ({ scope }: CorrectedNumber) => scopes.indexOf(JSON.stringify(scope));
  return [...numbers].sort(
    (a, b) => place(a) - place(b) || rankOf(a.nutrient) - rankOf(b.nutrient),
  );
}

function corrected(
  change: NumberChange,
  { locked, then, now, since }: BothSides,
): CorrectedNumber[] {
  const { scope, nutrient, from } = change;
  if (!from || !figuresFor(locked.figures, scope)?.[nutrient]) return [];
  const was = then(nutrient, scope);
  // What nobody had confirmed went out as open: there is no number to put right.
  if (was.status === 'open') return [];
  const is = figuresFor(now.figures, scope)?.[nutrient] ? since(nutrient, scope) : null;
  const to = is && numberThen(is);
  if (to?.text === was.text) return [];
  return [{ ...named(change), from: numberThen(was), to, spoken: is?.said?.outside === true }];
}

/**
 * What was said as it stands is what is published, however the ingredients change: where these no longer allow it, the
 * number in the video is wrong and the text repeats it.
 */
function spokenOnly(
  { locked, then, now, since }: BothSides,
  changes: readonly NumberChange[],
): CorrectedNumber[] {
  return spokenNumbers(now.file.said).flatMap(({ nutrient, scope }): CorrectedNumber[] => {
    const figure = figuresFor(now.figures, scope)?.[nutrient];
    const change = changes.find(isSameAs({ nutrient, scope }));
    if (!figure || !change || !figuresFor(locked.figures, scope)?.[nutrient]) return [];
    const [was, is] = [then(nutrient, scope), since(nutrient, scope)];
    if (is.said?.outside !== true || was.said?.outside === true) return [];
    const { text, range } = printFigure(figure, publishedStep(nutrient));
    const to = { text, range };
    return [{ ...named(change), from: numberThen(was), to, spoken: true }];
  });
}

function named({ scope, dish, part, nutrient, label, unit }: NumberChange) {
  return { scope, dish, part, nutrient, label, unit };
}

const numberThen = ({ text, range }: PublishedNumber): NumberThen => ({ text, range });

type OfNumber = Pick<CorrectedNumber, 'nutrient' | 'scope'>;

const isSameAs = (one: OfNumber) => (other: OfNumber) =>
  one.nutrient === other.nutrient && JSON.stringify(one.scope) === JSON.stringify(other.scope);

/** "846 kcal", "94 g protein", "protein open". */
export function numberWords(
  { nutrient, unit }: Pick<CorrectedNumber, 'nutrient' | 'unit'>,
  text: string,
): string {
  const isEnergy = unit === 'kcal' || unit === 'kJ';
  const { label } = NUTRIENTS[nutrient];
  if (text === 'open') return `${isEnergy ? unit : label} open`;
  return isEnergy ? `${text} ${unit}` : `${text} ${unit} ${label}`;
}
