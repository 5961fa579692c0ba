import { ENGLISH } from '#lib/claims/english/english';
import type { BeyondDish } from '#lib/claims/judge-beyond/beyond-context';
import { chooseByOven, chooseSteps } from '#lib/claims/judge-beyond/choose-steps';
import type { InAll } from '#lib/claims/judge-beyond/minutes-run';
import { meaningOf, settle, type Meaning } from '#lib/claims/judge-beyond/meanings';
import { minutesRange, minutesText } from '#lib/claims/judge-beyond/number-words';
import { BEHIND, stems, type Around } from '#lib/claims/judge-beyond/words-around';
import { cannotSay, plainly, worded, type Verdicted } from '#lib/claims/judge/verdicted';
import {
  holdAgainst,
  saidInterval,
  type SaidInterval,
  type SaidNumber,
} from '#lib/claims/said-interval';
import type { Statement } from '#lib/claims/statement';
import type { Dish } from '#lib/episode/context';
import type { Step } from '#lib/episode/step-schema';

type Minutes = Extract<Statement, { readonly unit: 'min' }>;

/** Steps that make the dish: the others are the filming’s. */
const COOKING: ReadonlySet<Step['role']> = new Set(['prep', 'cook', 'wait']);
/** Words, by their stems, for a time in which a dish is left alone. */
const RESTS = ['rest', 'cool', 'stand', 'sit'];
/** A second either way: no time is said more exactly. */
const LEAST_HALF = 1 / 120;
/** Minutes by which a press on the day may miss. Common practice, no source. */
const PRESSED = 1;

/** A time that the dish has, in minutes. */
interface Time {
  readonly title: string;
  readonly low: number;
  readonly usual: number;
  readonly high: number;
  /** What it took on the day; null where it was not logged. */
  readonly took: number | null;
  readonly stepId: string;
}

/** What minutes cover, and how far “about” reaches: 5 %, and at least a minute. Common practice, no source. */
export function minutesSaid(statement: SaidNumber): SaidInterval {
  return saidInterval(statement, {
    spoken: false,
    half: (digit) => Math.max(LEAST_HALF, digit),
    about: (value) => Math.max(1, value * 0.05),
  });
}

/**
 * Minutes held against the steps that the words speak of: within a step’s shortest and longest time they agree, or
 * within the length that the plan may choose; where the day was logged they agree with what it took. Words that name no
 * step are held against none.
 */
export function judgeMinutes(
  statement: Minutes,
  { dish, facts }: BeyondDish,
  sentence: Around,
  inAll?: InAll,
): Verdicted {
  const around = ownClause(sentence, inAll !== undefined);
  const all = dish.steps.filter(({ role }) => COOKING.has(role));
  if (all.length === 0) return cannotSay(`${dish.title} has no steps with times`);
  const appliance = applianceIn(around.behind);
  const cooking = appliance ? stepsIn(appliance, all) : all;
  if (cooking.length === 0)
    return cannotSay(`no step of ${dish.title} names the ${appliance ?? ''}`);
  const took = new Map((facts?.steps ?? []).map(({ stepId, tookS }) => [stepId, tookS / 60]));
  const times = timesOf(cooking, took, around);
  if (times.length === 0) return cannotSay('which step? The words name none');
  const said = minutesSaid(statement);
  const meanings = times.map((time) => held(statement, said, dish, time));
  const whole = times.length > 1 ? [held(statement, said, dish, sumOf(times))] : [];
  const verdict = settle([...meanings, ...whole], 'which step?');
  if (verdict.verdict !== 'off' || !inAll) return verdict;
  const together = { ...statement, ...inAll };
  const sum = settle(
    times.map((time) => held(together, minutesSaid(together), dish, time)),
    'which step?',
  );
  return sum.verdict === 'agrees' || sum.verdict === 'edge'
    ? worded(sum.verdict, () => ({
        ...plainly(sum),
        why: `${minutesRange(inAll.low, inAll.high)} in all: ${sum.why}`,
      }))
    : verdict;
}

/** Words in what stands before a time that are too few to tell of another thing than the time before them. */
const FEW = 1;

/**
 * What is said around a time of its own action alone: in a sentence of several, as speech without full stops is, what
 * stands behind 'meanwhile', and behind the time before it unless it goes on from that.
 */
function ownClause(sentence: Around, goesOn: boolean): Around {
  const { meanwhile, aTime } = ENGLISH.judging;
  const { behind } = sentence;
  const since = behindLast(sentence.before, meanwhile);
  const own = goesOn ? since : behindLast(since, aTime);
  const before = stems(own).length > FEW ? own : since;
  if (before === sentence.before) return sentence;
  const next = stems(behind.split(meanwhile)[0] ?? '');
  return { before, behind, stems: new Set([...stems(before), ...next.slice(0, BEHIND)]) };
}

/** What stands behind the last of a pattern; all of it where it is nowhere. */
function behindLast(text: string, pattern: RegExp): string {
  const last = [...text.matchAll(pattern)].at(-1);
  return last ? text.slice(last.index + last[0].length) : text;
}

/** The kind of appliance that is named right behind a time; null where none is. */
function applianceIn(behind: string): string | null {
  const name = ENGLISH.judging.inAppliance.exec(behind)?.[1]?.toLowerCase();
  return ENGLISH.judging.appliances.get(name?.replace(/\s+/g, ' ') ?? '') ?? null;
}

/** Names of appliances as words of a title, with their kinds. */
const NAMES = [...ENGLISH.judging.appliances].map(
  ([name, kind]) => [new RegExp(`\\b${name}\\b`, 'i'), kind] as const,
);

const kindsOf = ({ title, oven }: Step): readonly string[] => [
  ...NAMES.flatMap(([name, kind]) => (name.test(title) ? [kind] : [])),
  ...(oven ? ['oven'] : []),
];

/** The steps that may be in an appliance: those whose title names it; else those that are in no other. */
function stepsIn(kind: string, steps: readonly Step[]): readonly Step[] {
  const named = steps.filter((step) => kindsOf(step).includes(kind));
  return named.length > 0 ? named : steps.filter((step) => kindsOf(step).length === 0);
}

function timesOf(
  steps: readonly Step[],
  took: ReadonlyMap<string, number>,
  { before, behind, stems: around }: Around,
): Time[] {
  const resting = RESTS.some((stem) => around.has(stem));
  const rests = steps.filter(({ restS }) => restS > 0);
  const chosen = chooseSteps(steps, around);
  const of = chosen.named ? chosen.steps : chooseByOven(steps, { before, behind });
  const named = of.map((step) => timeOf(step, took));
  if (!resting) return named;
  const waits = named.filter(
    ({ stepId }) => steps.find(({ id }) => id === stepId)?.role === 'wait',
  );
  return [...waits, ...chooseSteps(rests, around).steps.map(restOf)];
}

function timeOf(step: Step, took: ReadonlyMap<string, number>): Time {
  const { id, title, choose, lowS, usualS, highS } = step;
  const [low, high] = choose ? [choose.minS, choose.maxS] : [lowS, highS];
  const usual = Math.min(high, Math.max(low, usualS));
  const minutes = { low: low / 60, usual: usual / 60, high: high / 60 };
  return { title, ...minutes, took: took.get(id) ?? null, stepId: id };
}

function restOf({ id, title, restS }: Step): Time {
  const rest = restS / 60;
  return {
    title: `${title}: its rest`,
    low: rest,
    usual: rest,
    high: rest,
    took: null,
    stepId: id,
  };
}

/** All of them one after another. */
function sumOf(times: readonly Time[]): Time {
  const sum = (of: (time: Time) => number) => times.reduce((total, time) => total + of(time), 0);
  const logged = times.every(({ took }) => took !== null);
  return {
    title: `${times.map(({ title }) => title).join(' + ')}`,
    low: sum(({ low }) => low),
    usual: sum(({ usual }) => usual),
    high: sum(({ high }) => high),
    took: logged ? sum(({ took }) => took ?? 0) : null,
    stepId: times[0]?.stepId ?? '',
  };
}

function held(statement: Minutes, said: SaidInterval, { id }: Dish, time: Time): Meaning {
  const { title, low, usual, high, took, stepId } = time;
  const against = { kind: 'step', segmentId: id, stepId } as const;
  const range = { value: usual, low, high };
  const inside = statement.low >= low && statement.high <= high && !said.oneSided;
  const plain = holdAgainst(said, range);
  const byPlan = plain === 'edge' && inside ? 'agrees' : plain;
  const apart = (of: string) => (distance: number, above: boolean) =>
    `${minutesText(distance)} ${above ? 'longer' : 'shorter'} than ${of}`;
  if (took === null) {
    return meaningOf(
      said,
      statement,
      range,
      () => {
        const planned = minutesRange(low, high);
        return {
          ...{ why: `your step “${title}” takes ${planned}`, called: `“${title}” ${planned}` },
          ...{ sayInstead: planned, apart: apart('your step'), against },
        };
      },
      byPlan,
    );
  }
  const logged = { value: took, low: Math.max(0, took - PRESSED), high: took + PRESSED };
  const byLog = holdAgainst(said, logged);
  const verdict = byLog === 'off' && byPlan !== 'off' ? 'edge' : byLog;
  return meaningOf(
    said,
    statement,
    logged,
    () => ({
      why: `“${title}” took ${minutesText(took)} on the day; the step says ${minutesRange(low, high)}`,
      called: `“${title}” ${minutesText(took)} on the day`,
      sayInstead: minutesText(took),
      apart: apart('it took'),
      against,
    }),
    verdict,
  );
}
