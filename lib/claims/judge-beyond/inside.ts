import type { LeastPublished } from '#lib/claims/edit-facts';
import type { BeyondContext, BeyondDish } from '#lib/claims/judge-beyond/beyond-context';
import { chooseSteps } from '#lib/claims/judge-beyond/choose-steps';
import { degrees, setAt } from '#lib/claims/judge-beyond/degrees-text';
import { meaningOf, settle, type Meaning } from '#lib/claims/judge-beyond/meanings';
import { degreesIn } from '#lib/claims/judge-beyond/oven-table';
import { isBelow, isUpTo, leastFor, leastIn } from '#lib/claims/judge-beyond/least-inside';
import type { Around } from '#lib/claims/judge-beyond/words-around';
import { cannotSay, plainly, worded, type Verdicted } from '#lib/claims/judge/verdicted';
import { saidInterval } from '#lib/claims/said-interval';
import type { Statement } from '#lib/claims/statement';
import type { Step } from '#lib/episode/step-schema';

type Inside = Statement & { readonly kind: 'insideTemperature' };

/** How far “about” reaches, and how far a thermometer of a kitchen may miss. Common practice, no source. */
const ABOUT = { C: 1, F: 2 } as const;
const MISSES = { C: 0.5, F: 1 } as const;

/** Degrees Celsius are published to a tenth: nearer than half of that nothing is below. */
const HALF_TENTH = 50;

/**
 * An inside temperature held against the steps of the dish and the hottest reading of the day; before that against the
 * least that is published for what may go into it raw (FoodSafety.gov, the same at USDA FSIS): below it nothing agrees,
 * whatever step or reading says so, and the published caution, which defers to the local code, is told.
 */
export function judgeInside(
  statement: Inside,
  of: BeyondDish,
  around: Around,
  { file }: BeyondContext,
): Verdicted {
  const { dish, facts } = of;
  const { region } = file.episode;
  const probed = dish.steps.filter(({ coreMilliC }) => coreMilliC !== null);
  const { steps } = chooseSteps(probed, around.stems);
  const titles = steps.map(({ title }) => title);
  const least = leastFor(facts?.inside ?? [], around, statement.words, titles);
  const held = safely(settledOf(statement, of, steps, region), of, least[0], statement.unit);
  const short = least.filter((each) => isBelow(statement, each));
  const agreed = held.verdict === 'agrees' || held.verdict === 'edge';
  const [strictest] = short;
  if (!strictest) {
    const milliC = (agreed ? heldTo(held, of) : null) ?? Infinity;
    const cool = least.filter((each) => milliC + HALF_TENTH < each.milliC);
    if (cool.length === 0) return cautioned(held, of, least);
    const cause = `${held.why}, which is itself below what is published. ${cautionsOf(cool)}`;
    return cannotSay(cause, { against: held.against, remark: 'toConfirm' });
  }
  const cautions = cautionsOf(short);
  if (short.length < least.length) {
    return agreed
      ? cannotSay(`of which food? ${cautions}`, { against: held.against, remark: 'toConfirm' })
      : { ...plainly(held), why: `${held.why}. ${cautions}` };
  }
  const { unit } = statement;
  const exact = leastIn(strictest, unit);
  const missing = degrees(Math.max(0.1, exact - statement.low), unit);
  return {
    verdict: 'off',
    why: held.verdict === 'unknown' ? cautions : `${held.why}. ${cautions}`,
    difference: isUpTo(statement)
      ? `${degrees(exact, unit)} is the published least, not the most`
      : `${missing} below the published least`,
    sayInstead: atLeast(strictest, unit),
    remark: null,
    against: { kind: 'rule', segmentId: dish.id },
  };
}

/** With what is published, where the dish itself has nothing to hold a number against. */
function cautioned(held: Verdicted, of: BeyondDish, least: readonly LeastPublished[]): Verdicted {
  if (held.verdict !== 'unknown' || least.length === 0) return held;
  const { dish, facts } = of;
  const isKnown = dish.steps.some(({ coreMilliC }) => coreMilliC !== null);
  if (isKnown || (facts?.coreMilliC ?? []).length > 0) return held;
  return worded('unknown', () => ({ ...plainly(held), why: `${held.why}. ${cautionsOf(least)}` }));
}

const cautionsOf = (least: readonly LeastPublished[]) =>
  [...new Set(least.map(({ caution }) => caution))].join(' ');

const atLeast = (least: LeastPublished, unit: Inside['unit']) =>
  `at least ${degrees(Math.ceil(leastIn(least, unit)), unit)}`;

/**
 * What is off with words to say instead that ask for no less than is published. A step that goes to the published least
 * is told by that: 74 °C are “at least 165 °F”, and not 166.
 */
function safely(
  held: Verdicted,
  of: BeyondDish,
  strictest: LeastPublished | undefined,
  unit: Inside['unit'],
): Verdicted {
  if (held.verdict !== 'off' || !strictest) return held;
  return worded('off', () => {
    const milliC = heldTo(held, of);
    if (milliC === null || held.sayInstead === null) return held;
    const isCool = milliC + HALF_TENTH < strictest.milliC;
    const isLeast = Math.abs(degreesIn(milliC, unit) - leastIn(strictest, unit)) < 0.5;
    return isCool || isLeast ? { ...plainly(held), sayInstead: atLeast(strictest, unit) } : held;
  });
}

/** What a statement is held against, in thousandths of a degree: a step, or the hottest reading. */
function heldTo({ against }: Verdicted, { dish, facts }: BeyondDish): number | null {
  if (against?.kind === 'log') return Math.max(...(facts?.coreMilliC ?? []));
  if (against?.kind !== 'step') return null;
  return dish.steps.find(({ id }) => id === against.stepId)?.coreMilliC ?? null;
}

function settledOf(
  statement: Inside,
  { dish, facts }: BeyondDish,
  chosen: readonly Step[],
  region: BeyondContext['file']['episode']['region'],
): Verdicted {
  const { unit } = statement;
  const said = saidInterval(statement, { spoken: false, about: () => ABOUT[unit] });
  const print = (value: number) => degrees(value, unit);
  const rangeOf = (milliC: number) => {
    const value = degreesIn(milliC, unit);
    return { value, low: value - MISSES[unit], high: value + MISSES[unit] };
  };
  const aparts = (of: string) => (distance: number, above: boolean) =>
    `${print(distance)} ${above ? 'more' : 'less'} than ${of}`;
  const hottest = Math.max(...(facts?.coreMilliC ?? []));
  const readings: Meaning[] = Number.isFinite(hottest)
    ? [
        meaningOf(said, statement, rangeOf(hottest), () => ({
          why: `the hottest reading of the day was ${print(degreesIn(hottest, unit))}`,
          called: `read ${print(degreesIn(hottest, unit))}`,
          sayInstead: print(degreesIn(hottest, unit)),
          apart: aparts('was read'),
          against: { kind: 'log', segmentId: dish.id },
        })),
      ]
    : [];
  const steps = chosen.map((step) => {
    const milliC = step.coreMilliC ?? 0;
    return meaningOf(said, statement, rangeOf(milliC), () => {
      const set = setAt(milliC, region);
      const inUnit = print(degreesIn(milliC, unit));
      const shown = degrees(set.value, set.unit);
      return {
        why: `your step “${step.title}” goes to ${shown} inside${set.unit === unit ? '' : `, which is ${inUnit}`}`,
        called: `“${step.title}” ${shown}`,
        sayInstead: print(Math.ceil(degreesIn(milliC, unit) - 0.05)),
        apart: aparts('your step'),
        against: { kind: 'step', segmentId: dish.id, stepId: step.id },
      };
    });
  });
  // What was read in the end may be said as well as what the step asks for: both are borne out.
  const [read] = readings;
  if (read?.verdict === 'agrees') return settle([read], '');
  if (steps.length === 0 && readings.length === 0) {
    return cannotSay(`no step of ${dish.title} has an inside temperature, and none was read`);
  }
  return settle(steps.length > 0 ? steps : readings, 'which step?');
}
