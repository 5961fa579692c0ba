import { ENGLISH } from '#lib/claims/english/english';
import type { BeyondContext, BeyondDish } from '#lib/claims/judge-beyond/beyond-context';
import { chooseSteps } from '#lib/claims/judge-beyond/choose-steps';
import { degrees, setAt } from '#lib/claims/judge-beyond/degrees-text';
import { meaningOf, settle, type Meaning, type Told } from '#lib/claims/judge-beyond/meanings';
import {
  degreesIn,
  FAN_C,
  GAS_MARKS,
  isUsualRounding,
  ROUNDING,
} from '#lib/claims/judge-beyond/oven-table';
import { cannotSay, type Verdicted } from '#lib/claims/judge/verdicted';
import { covers, saidInterval } from '#lib/claims/said-interval';
import type { Statement } from '#lib/claims/statement';
import type { Step } from '#lib/episode/step-schema';
import { settled } from '#lib/units/print';

type Oven = Statement & { readonly kind: 'ovenTemperature' };

/** How far “about” reaches in an oven: as far as a conversion rounds; half a gas mark. Common practice, no source. */
const ABOUT = { C: 5, F: 10, gas: 0.5 } as const;

/**
 * Oven degrees held against the dish’s steps: the same number agrees, and so does what cookbooks print for it in the
 * other unit, which is then said. With the fan an oven is set 20 °C lower; where a step does not say whether it means
 * the fan, nobody can say.
 */
export function judgeOven(
  statement: Oven,
  { dish }: BeyondDish,
  around: ReadonlySet<string>,
  { file }: BeyondContext,
): Verdicted {
  const baked = dish.steps.filter(({ oven }) => oven !== null);
  if (baked.length === 0) return cannotSay(`no step of ${dish.title} needs an oven`);
  const { steps } = chooseSteps(baked, around);
  const ovens = new Map(file.kitchen.ovens.map(({ id, name }) => [id, name]));
  const meanings = steps.flatMap((step) =>
    meaningsOf(statement, dish.id, step, fanOf(step, ovens), file.episode.region),
  );
  const temperatures = new Set(steps.map(({ oven }) => oven?.milliC));
  if (
    temperatures.size === 1 &&
    statement.fan &&
    steps.some((step) => fanOf(step, ovens) === null)
  ) {
    const [step] = steps;
    if (step && meanings.some(({ verdict }) => verdict !== 'off')) {
      return cannotSay(`${set(step, file.episode.region)}: with the fan or without? ${FAN_WORDS}`, {
        against: { kind: 'step', segmentId: dish.id, stepId: step.id },
      });
    }
  }
  return settle(meanings, 'which step?');
}

const FAN_WORDS = `With its fan an oven is usually set ${FAN_C} °C lower`;

type Region = BeyondContext['file']['episode']['region'];

function set(step: Step, region: Region): string {
  const { value, unit } = setAt(step.oven?.milliC ?? 0, region);
  return `your step “${step.title}” is at ${degrees(value, unit)}`;
}

/** The same in the unit of a statement, and with the fan where it is held against that. */
function setIn(step: Step, region: Region, unit: 'C' | 'F', heldMilliC: number): string {
  const milliC = step.oven?.milliC ?? 0;
  const exact = degreesIn(milliC, unit);
  const round = Math.abs(exact - Math.round(exact / 5) * 5) < 0.002;
  const plain = setAt(milliC, region).unit === unit || round;
  const shown = plain
    ? `your step “${step.title}” is at ${degrees(exact, unit)}`
    : `${set(step, region)}, which is ${degrees(exact, unit)}`;
  return heldMilliC === milliC
    ? shown
    : `${shown}, with its fan usually ${degrees(degreesIn(heldMilliC, unit), unit)}`;
}

/** Whether a step says that the oven’s fan runs, or does not; else the name of its oven; null where neither says. */
function fanOf({ title, note, oven }: Step, ovens: ReadonlyMap<string, string>): boolean | null {
  const said = [title, note, ovens.get(oven?.ovenId ?? '') ?? ''].find((words) =>
    ENGLISH.patterns.fan.test(words),
  );
  return said === undefined ? null : !ENGLISH.patterns.noFan.test(said);
}

/** One meaning; two where a fan is said and the step does not say whether it means one. */
function meaningsOf(
  statement: Oven,
  segmentId: string,
  step: Step,
  fan: boolean | null,
  region: Region,
): Meaning[] {
  const milliC = step.oven?.milliC ?? 0;
  const plain = heldAt(statement, segmentId, step, milliC, region);
  if (!statement.fan || fan === true) return [plain];
  const lower = heldAt(statement, segmentId, step, milliC - FAN_C * 1000, region);
  return fan === false ? [lower] : [plain, lower];
}

function heldAt(
  statement: Oven,
  segmentId: string,
  step: Step,
  milliC: number,
  region: Region,
): Meaning {
  const against = { kind: 'step', segmentId, stepId: step.id } as const;
  const own = setAt(milliC, region);
  const common = () => {
    const shown = degrees(own.value, own.unit);
    return { against, called: `“${step.title}” ${shown}`, shown };
  };
  const { unit } = statement;
  if (unit === 'gas') {
    return ofGas(statement, milliC, () => ({ ...common(), why: set(step, region) }));
  }
  const exact = degreesIn(milliC, unit);
  const same = own.unit === unit;
  const round = Math.abs(exact - Math.round(exact / 5) * 5) < 0.002;
  const said = saidInterval(statement, { spoken: false, about: () => ABOUT[unit] });
  const told = (why?: string): Told => ({
    ...common(),
    why: why ?? setIn(step, region, unit, milliC),
    sayInstead: same || round ? degrees(exact, unit) : degrees(roundedIn(exact, unit), unit),
    apart: (distance, above) =>
      `${degrees(distance, unit)} ${above ? 'hotter' : 'cooler'} than your step`,
  });
  const range = { value: exact, low: exact, high: exact };
  const held = meaningOf(said, statement, range, () => told());
  // 545 °F are 285 °C and need no rounding; 160 °C are 320 °F, for which cookbooks print 325 °F.
  if (held.verdict !== 'off' || same || (round && unit === 'C')) return held;
  if (statement.low !== statement.high || statement.hedge !== 'none') return held;
  if (isUsualRounding(statement.low, exact, unit)) {
    const why = () => {
      const words = `${degrees(statement.low, unit)} is a usual rounding of it`;
      return `${set(step, region)}, which is ${degrees(exact, unit)}; ${words}`;
    };
    return meaningOf(said, statement, range, () => told(why()), 'agrees');
  }
  const near = !round && Math.abs(statement.low - exact) <= ROUNDING[unit];
  return near ? meaningOf(said, statement, range, () => told(), 'edge') : held;
}

const roundedIn = (exact: number, unit: 'C' | 'F') =>
  unit === 'C' ? Math.round(exact / 5) * 5 : Math.round(exact / 25) * 25 || exact;

/** A gas mark by what cookbooks print beside it, in either unit. */
function ofGas(
  statement: Oven,
  milliC: number,
  common: () => Pick<Told, 'against' | 'called' | 'why'> & { readonly shown: string },
): Meaning {
  const said = saidInterval(statement, { spoken: false, half: () => 0, about: () => ABOUT.gas });
  const marks = [...GAS_MARKS].filter(([mark]) => covers(said, mark));
  const fits = ({ celsius, fahrenheit }: { celsius: number; fahrenheit: number }) =>
    Math.abs(celsius - degreesIn(milliC, 'C')) <= ROUNDING.C ||
    Math.abs(fahrenheit - degreesIn(milliC, 'F')) <= ROUNDING.F;
  const right = [...GAS_MARKS].filter(([, of]) => fits(of)).map(([mark]) => mark);
  const named = marks.map(([mark, of]) => `gas ${mark} is about ${of.celsius} °C`).join(', ');
  const told = (): Told => {
    const { why, shown, ...more } = common();
    return {
      ...more,
      why: named === '' ? why : `${why}; ${named} by the usual table`,
      sayInstead: right[0] === undefined ? shown : `gas ${right[0]}`,
      apart: (distance, above) =>
        `${degrees(distance, 'C')} ${above ? 'hotter' : 'cooler'} than your step`,
    };
  };
  const exact = settled(degreesIn(milliC, 'C'));
  const range = { value: exact, low: exact, high: exact };
  if (marks.length === 0) {
    // Between two marks of the table; beyond it there is nothing to hold it against.
    const low = GAS_MARKS.get(Math.floor(statement.low))?.celsius ?? Infinity;
    const high = GAS_MARKS.get(Math.ceil(statement.high))?.celsius ?? -Infinity;
    const verdict = exact >= low && exact <= high ? 'edge' : 'off';
    return meaningOf(said, { low: exact, high: exact }, range, told, verdict);
  }
  const celsius = marks.map(([, of]) => of.celsius);
  const number = { low: Math.min(...celsius), high: Math.max(...celsius) };
  return meaningOf(said, number, range, told, marks.some(([, of]) => fits(of)) ? 'agrees' : 'off');
}
