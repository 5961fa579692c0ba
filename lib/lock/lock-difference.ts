import type { EpisodeFile } from '#lib/episode/schema';
import type { DishFigures, EpisodeFigures, Figures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import { printFigure } from '#lib/figures/print-figure';
import {
  publishedNumbers,
  publishedStep,
  type NumberScope,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';
import { isSameFigure } from '#lib/figures/same-figure';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { inputsInWords, type InputGroup } from '#lib/lock/inputs-in-words';
import { UNREADABLE_LOCK } from '#lib/lock/lock-standing';
import { readSnapshot, type LockedSnapshot } from '#lib/lock/locked-snapshot';
import { ENGINE_VERSION, lockHolds } from '#lib/lock/numbers-lock';

/** A number that is another one now; null on the side where there is none. */
export interface NumberChange {
  readonly scope: NumberScope;
  /** The dish's title; null for the day. */
  readonly dish: string | null;
  /** What of it: "the whole dish", a portion's name, "100 g, finished", "the day". */
  readonly part: string;
  readonly nutrient: Nutrient;
  readonly label: string;
  readonly unit: string;
  readonly from: NumberThen | null;
  readonly to: NumberThen | null;
  /** The number is written alike, and only its range has moved. */
  readonly rangeOnly: boolean;
  /** What it is of is what it was: it is written otherwise only so that the numbers beside it add up. */
  readonly sumOnly: boolean;
}

export interface NumberThen {
  /** As it is written: "846", "at least 9", "open". */
  readonly text: string;
  readonly range: string;
}

/** Something that numbers rest on and that has changed; empty words where nothing stood or stands. */
export interface InputChange {
  /** The dish's title; empty where it is in none. */
  readonly where: string;
  /** The dish's segment; null where it is in none of the running order. */
  readonly segmentId: string | null;
  readonly what: string;
  readonly from: string;
  readonly to: string;
}

/** What has changed under a lock. */
export interface LockDifference {
  readonly holds: boolean;
  /** The calculation itself is another version's. */
  readonly otherEngine: boolean;
  readonly numbers: readonly NumberChange[];
  readonly inputs: readonly InputChange[];
}

const NOTHING_CHANGED: LockDifference = {
  holds: true,
  otherEngine: false,
  numbers: [],
  inputs: [],
};

/**
 * What has changed under a lock: every number that is written otherwise or has another range, dish by dish and part by
 * part, and every input, in words. Nothing where the lock holds.
 *
 * Law: a lock that does not hold names at least one input, or the calculation.
 * @param snapshot canonical JSON as `takeLock` made it
 * @param figures the figures as they are now
 * @example lockDifference(takeLock(file).snapshot, file, episodeFigures(file)).numbers // []
 */
export function lockDifference(
  snapshot: string,
  file: EpisodeFile,
  figures: EpisodeFigures,
): LockDifference {
  const locked = readSnapshot(snapshot);
  if (!locked) {
    return { ...NOTHING_CHANGED, holds: false, inputs: [change(NOWHERE, UNREADABLE_LOCK, '', '')] };
  }
  if (lockHolds(locked, file)) return NOTHING_CHANGED;
  return {
    holds: false,
    otherEngine: locked.engineVersion !== ENGINE_VERSION,
    numbers: numberChanges(locked, file, figures),
    inputs: inputChanges(locked, file),
  };
}

interface Part {
  readonly scope: NumberScope;
  readonly dish: string | null;
  readonly part: string;
  readonly figures: Figures;
}

function partsOf({ dishes, day, dayIsWhole }: EpisodeFigures): ReadonlyMap<string, Part> {
  const all = [
    ...dishes.flatMap(ofDish),
    {
      scope: { kind: 'day' },
      dish: null,
      part: dayIsWhole ? 'the day' : 'the dishes shown',
      figures: day,
    } as const,
  ];
  return new Map(all.map((each) => [JSON.stringify(each.scope), each]));
}

function ofDish({ segmentId, title, whole, portions, per100g }: DishFigures): Part[] {
  return [
    { scope: { kind: 'whole', segmentId }, dish: title, part: 'the whole dish', figures: whole },
    ...portions.map(({ portionId, name, figures }): Part => {
      return { scope: { kind: 'portion', portionId }, dish: title, part: name, figures };
    }),
    ...(per100g
      ? [
          {
            scope: { kind: 'per100g', segmentId },
            dish: title,
            part: '100 g, finished',
            figures: per100g,
          } as const,
        ]
      : []),
  ];
}

function numberChanges(
  locked: LockedSnapshot,
  file: EpisodeFile,
  figures: EpisodeFigures,
): NumberChange[] {
  const [before, after] = [partsOf(locked.figures), partsOf(figures)];
  const printedThen = printer(locked.file && publishedNumbers(locked.file, locked.figures));
  const printedNow = printer(publishedNumbers(file, figures));
  const sameStep = locked.file?.episode.energyStep === file.episode.energyStep;
  const keys = [...after.keys(), ...[...before.keys()].filter((key) => !after.has(key))];
  const nutrients = [...new Set([...figures.nutrients, ...locked.figures.nutrients])];
  return keys.flatMap((key) => {
    const [was, is] = [before.get(key), after.get(key)];
    const named = is ?? was;
    if (!named) return [];
    return nutrients.flatMap((nutrient): NumberChange[] => {
      const from = printedThen(was, nutrient);
      const to = printedNow(is, nutrient);
      if (from?.text === to?.text && from?.range === to?.range) return [];
      // A nutrient that is counted since or no longer is no change of a number.
      if (was && is && (from === null || to === null)) return [];
      const { label, unit } = NUTRIENTS[nutrient];
      const { scope, dish, part } = named;
      const rangeOnly = from?.text === to?.text;
      const sumOnly = !rangeOnly && sameStep && isAlike(was, is, nutrient) && isSaidAlike(from, to);
      const sides = { from: numberThen(from), to: numberThen(to) };
      return [{ scope, dish, part, nutrient, label, unit, ...sides, rangeOnly, sumOnly }];
    });
  });
}

/** Whether an amount of a part is what it was, whatever is written of it. */
function isAlike(was: Part | undefined, is: Part | undefined, nutrient: Nutrient): boolean {
  const [then, now] = [was?.figures[nutrient], is?.figures[nutrient]];
  return then !== undefined && now !== undefined && isSameFigure(then, now);
}

/** What was said in front of the camera is written for its own sake. */
const isSaidAlike = (from: Printed | null, to: Printed | null) => from?.said === to?.said;

/** As it is printed, and the words by which it was said; empty where it was not. */
interface Printed extends NumberThen {
  readonly said: string;
}

type Printer = (part: Part | undefined, nutrient: Nutrient) => Printed | null;

/** As it is published where the inputs are known, with the tally; else rounded alone. */
function printer(numbers: PublishedNumbers | null): Printer {
  return (part, nutrient) => {
    const figure: Figure | undefined = part?.figures[nutrient];
    if (!part || !figure) return null;
    if (!numbers) {
      const { text, range } = printFigure(figure, publishedStep(nutrient));
      return { text, range, said: '' };
    }
    const { text, range, said } = numbers(nutrient, part.scope);
    return { text, range, said: said?.words ?? '' };
  };
}

const numberThen = (printed: Printed | null): NumberThen | null =>
  printed && { text: printed.text, range: printed.range };

type At = Pick<InputChange, 'where' | 'segmentId'>;
const NOWHERE: At = { where: '', segmentId: null };

const change = ({ where, segmentId }: At, what: string, from: string, to: string): InputChange => ({
  where,
  segmentId,
  what,
  from,
  to,
});

function inputChanges(
  { engineVersion, file: then }: LockedSnapshot,
  file: EpisodeFile,
): InputChange[] {
  if (!then) return [change(NOWHERE, 'what it rested on cannot be read any more', '', '')];
  const before = new Map(inputsInWords(then).map((group) => [group.key, group]));
  const after = new Map(inputsInWords(file).map((group) => [group.key, group]));
  const changes = [
    ...[...after.values()].flatMap((now) => {
      const was = before.get(now.key);
      return was ? fieldChanges(was, now) : [change(now, now.what, '', now.summary)];
    }),
    ...[...before.values()]
      .filter(({ key }) => !after.has(key))
      .map((was) => change(was, was.what, was.summary, '')),
  ];
  if (changes.length > 0 || engineVersion !== ENGINE_VERSION) return changes;
  return [change(NOWHERE, 'something under it that has no words here', '', '')];
}

function fieldChanges(was: InputGroup, now: InputGroup): InputChange[] {
  const [then, since] = [was, now].map(({ fields }) => new Map(fields));
  const names = new Set([...(then?.keys() ?? []), ...(since?.keys() ?? [])]);
  return [...names].flatMap((name) => {
    const [from, to] = [then?.get(name) ?? '', since?.get(name) ?? ''];
    if (from === to) return [];
    return [change(now, name === '' ? now.what : `${now.what}, ${name}`, from, to)];
  });
}
