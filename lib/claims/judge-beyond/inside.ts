import type { LeastPublished } from '#lib/claims/edit-facts';
import type { BeyondContext, BeyondDish } from '#lib/claims/judge-beyond/beyond-context';
import { chooseSteps } from '#lib/claims/judge-beyond/choose-steps';
import { degrees, setAt } from '#lib/claims/judge-beyond/degrees-text';
import { meaningOf, settle, type Meaning } from '#lib/claims/judge-beyond/meanings';
import { degreesIn } from '#lib/claims/judge-beyond/oven-table';
import { stems } from '#lib/claims/judge-beyond/words-around';
import { cannotSay, plainly, type Verdicted } from '#lib/claims/judge/verdicted';
import { saidInterval } from '#lib/claims/said-interval';
import type { Statement } from '#lib/claims/statement';

type Inside = Statement & { readonly kind: 'insideTemperature' };

/** How far “about” reaches, and how far a thermometer of a kitchen may miss. Common practice, no source. */
const ABOUT = { C: 1, F: 2 } as const;
const MISSES = { C: 0.5, F: 1 } as const;

/**
 * An inside temperature held against the steps of the dish and the hottest reading of the day; before that against the
 * least that is published for its raw foods: below it nothing agrees, whatever step or reading says so, and the
 * published caution, which defers to the local code, is told.
 */
export function judgeInside(
  statement: Inside,
  { dish, facts }: BeyondDish,
  around: ReadonlySet<string>,
  { file }: BeyondContext,
): Verdicted {
  const { region } = file.episode;
  const held = settledOf(statement, dish, facts, around, region);
  const least = relevant(facts?.inside ?? [], around);
  const short = least.filter((each) => isBelow(statement, each));
  const [strictest] = short;
  if (!strictest) return held;
  const cautions = [...new Set(short.map(({ caution }) => caution))].join(' ');
  if (short.length < least.length) {
    const agreed = held.verdict === 'agrees' || held.verdict === 'edge';
    return agreed
      ? cannotSay(`of which food? ${cautions}`, { against: held.against, remark: 'toConfirm' })
      : { ...plainly(held), why: `${held.why}. ${cautions}` };
  }
  const { unit } = statement;
  const exact = unit === 'F' ? strictest.fahrenheit : strictest.milliC / 1000;
  return {
    verdict: 'off',
    why: held.verdict === 'unknown' ? cautions : `${held.why}. ${cautions}`,
    difference: `${degrees(Math.max(0.1, exact - statement.low), unit)} below the published least`,
    sayInstead: `at least ${degrees(Math.ceil(exact), unit)}`,
    remark: null,
    against: { kind: 'rule', segmentId: dish.id },
  };
}

/** Whether a number, as it was said, is below a published least; what is only said to be over a number is that number. */
function isBelow({ low, hedge, unit }: Inside, { milliC, fahrenheit }: LeastPublished): boolean {
  const least = unit === 'F' ? fahrenheit : milliC / 1000;
  if (hedge === 'almost' || hedge === 'under') return low <= least;
  return low + 0.5 < least;
}

/** Of several published leasts those of foods that the words name. */
function relevant(
  least: readonly LeastPublished[],
  around: ReadonlySet<string>,
): readonly LeastPublished[] {
  const named = least.filter(({ foods }) =>
    foods.some((food) => stems(food).some((stem) => around.has(stem))),
  );
  return named.length > 0 ? named : least;
}

function settledOf(
  statement: Inside,
  dish: BeyondDish['dish'],
  facts: BeyondDish['facts'],
  around: ReadonlySet<string>,
  region: BeyondContext['file']['episode']['region'],
): Verdicted {
  const { unit } = statement;
  const said = saidInterval(statement, { half: () => 0.5, about: () => ABOUT[unit] });
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
  const probed = dish.steps.filter(({ coreMilliC }) => coreMilliC !== null);
  const steps = chooseSteps(probed, around).steps.map((step) => {
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
