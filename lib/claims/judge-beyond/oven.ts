import { ENGLISH } from '#lib/claims/english/english';
import type { BeyondContext, BeyondDish } from '#lib/claims/judge-beyond/beyond-context';
import { chooseSteps } from '#lib/claims/judge-beyond/choose-steps';
import { degrees, setAt } from '#lib/claims/judge-beyond/degrees-text';
import { meaningOf, settle, type Meaning, type Told } from '#lib/claims/judge-beyond/meanings';
import { ovenSettings, type OvenSettings } from '#lib/claims/judge-beyond/oven-settings';
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
 * other unit, which is then said. With the fan an oven is set 20 °C lower; where a step says both settings, each holds
 * for its own kind, and where it does not say whether it means the fan, nobody can say.
 */
export function judgeOven(
  statement: Oven,
  { dish }: BeyondDish,
  around: ReadonlySet<string>,
  { file }: BeyondContext,
): Verdicted {
  const baked = dish.steps.filter(({ oven }) => oven !== null);
  if (baked.length === 0) return cannotSay(`no step of ${dish.title} needs an oven`);
  const { region } = file.episode;
  const ovens = new Map(file.kitchen.ovens.map(({ id, name }) => [id, name]));
  const steps = chooseSteps(baked, around).steps.map((step) => ({
    step,
    settings: ovenSettings(step, ovens),
  }));
  const meanings = steps.flatMap(({ step, settings }) =>
    meaningsOf(statement, dish.id, step, settings, region),
  );
  const [first] = steps;
  const asked = steps.some(({ settings }) => mayBeOther(statement, settings));
  const same = new Set(steps.map(({ step }) => step.oven?.milliC)).size === 1;
  if (first && asked && same && meanings.some(({ verdict }) => verdict !== 'off')) {
    const own = steps.map(({ step, settings }) =>
      heldFor(statement, dish.id, step, settings, region),
    );
    if (own.every((each) => each === null || each.verdict === 'off')) {
      const against = { kind: 'step', segmentId: dish.id, stepId: first.step.id } as const;
      return cannotSay(`${set(first.step, region)}: with the fan or without? ${FAN_WORDS}`, {
        against,
      });
    }
  }
  return settle(meanings, 'which step?');
}

/** Whether a number may be of the other setting than its words say: nobody said whether a fan is meant. */
const mayBeOther = ({ fan, unit }: Oven, { runs, both }: OvenSettings) =>
  fan ? runs === null : unit !== 'gas' && (both || runs === true);

const FAN_WORDS = `With its fan an oven is usually set ${FAN_C} °C lower`;

type Region = BeyondContext['file']['episode']['region'];

function set(step: Step, region: Region): string {
  const { value, unit } = setAt(step.oven?.milliC ?? 0, region);
  return `your step “${step.title}” is at ${degrees(value, unit)}`;
}

/** A setting that a number is held against, and what is known of the step's settings. */
interface HeldTo {
  readonly milliC: number;
  readonly settings: OvenSettings;
}

/** The same in the unit of a statement, and with the fan or without where it is held against that. */
function setIn(step: Step, region: Region, unit: 'C' | 'F', { milliC, settings }: HeldTo): string {
  const kept = step.oven?.milliC ?? 0;
  const held = degrees(degreesIn(milliC, unit), unit);
  const fan = milliC === settings.fan ? 'with its fan' : 'without a fan';
  if (settings.both) return `your step “${step.title}” is at ${held} ${fan}`;
  const exact = degreesIn(kept, unit);
  const round = Math.abs(exact - Math.round(exact / 5) * 5) < 0.002;
  const plain = setAt(kept, region).unit === unit || round;
  const shown = plain
    ? `your step “${step.title}” is at ${degrees(exact, unit)}`
    : `${set(step, region)}, which is ${degrees(exact, unit)}`;
  if (milliC === kept) return shown;
  return `${shown}, ${milliC < kept ? 'with its fan' : 'without a fan'} usually ${held}`;
}

/** A number held against the setting of its own kind; null where nobody knows that. */
function heldFor(
  statement: Oven,
  segmentId: string,
  step: Step,
  settings: OvenSettings,
  region: Region,
): Meaning | null {
  const kept = step.oven?.milliC ?? 0;
  const at = (milliC: number | null) =>
    milliC === null ? null : heldAt(statement, segmentId, step, { milliC, settings }, region);
  if (statement.fan) return at(settings.fan);
  // What stands in a step with its fan is said without that word too; a gas mark has no fan.
  const said = statement.unit !== 'gas' && settings.runs === true && !settings.both;
  return at(said ? kept : (settings.plain ?? kept));
}

/** One meaning; two where it may be of the other setting, since nobody said whether a fan is meant. */
function meaningsOf(
  statement: Oven,
  segmentId: string,
  step: Step,
  settings: OvenSettings,
  region: Region,
): Meaning[] {
  const kept = step.oven?.milliC ?? 0;
  const at = (milliC: number) => heldAt(statement, segmentId, step, { milliC, settings }, region);
  const own = heldFor(statement, segmentId, step, settings, region);
  if (own === null) return [at(kept), at(kept - FAN_C * 1000)];
  if (own.verdict !== 'off' || !mayBeOther(statement, settings)) return [own];
  const others = [settings.plain, settings.fan].flatMap((milliC) =>
    milliC === null ? [] : [at(milliC)],
  );
  return others.some(({ verdict }) => verdict !== 'off') ? [own, ...others] : [own];
}

function heldAt(
  statement: Oven,
  segmentId: string,
  step: Step,
  to: HeldTo,
  region: Region,
): Meaning {
  const { milliC } = to;
  const against = { kind: 'step', segmentId, stepId: step.id } as const;
  const own = setAt(milliC, region);
  const common = () => {
    const shown = degrees(own.value, own.unit);
    return { against, called: `“${step.title}” ${shown}`, shown };
  };
  // What is said instead stands in the place of all the words, with those for the fan.
  const fan = statement.fan && ENGLISH.patterns.fan.test(statement.words) ? ' fan' : '';
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
    why: why ?? setIn(step, region, unit, to),
    sayInstead: `${degrees(same || round ? exact : roundedIn(exact, unit), unit)}${fan}`,
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
