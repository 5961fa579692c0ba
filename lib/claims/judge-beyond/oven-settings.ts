import { ENGLISH } from '#lib/claims/english/english';
import { degreesIn, FAN_C, isUsualRounding } from '#lib/claims/judge-beyond/oven-table';
import type { Step } from '#lib/episode/step-schema';
import { fromFahrenheit } from '#lib/units/units';

const OVEN_DEGREES = new RegExp(ENGLISH.patterns.ovenDegrees, 'giu');

/** What an oven is set to in a step, in thousandths of a degree Celsius; null where nobody knows. */
export interface OvenSettings {
  readonly plain: number | null;
  readonly fan: number | null;
  /** Whether the words give both of them, so that neither is worked out from the other. */
  readonly both: boolean;
  /** Whether the oven's fan runs by the number that is kept; null where nobody said. */
  readonly runs: boolean | null;
}

/** One temperature in the words of a step. */
interface Written {
  readonly milliC: number;
  readonly unit: 'C' | 'F';
  readonly fan: boolean;
}

/**
 * The settings of a step's oven, with its fan and without: words that give both, as '180 °C / 160 °C fan', say each of
 * them; else they say, or the name of the oven says, whether the one number that is kept is meant with the fan, and the
 * other one is usually 20 °C apart.
 * @param ovens names of ovens by their ids
 */
export function ovenSettings(step: Step, ovens: ReadonlyMap<string, string>): OvenSettings {
  const { title, note, oven } = step;
  const kept = oven?.milliC ?? 0;
  const texts = [title, note, ovens.get(oven?.ovenId ?? '') ?? ''];
  for (const text of texts) {
    const pair = pairIn(text, kept);
    if (pair) return pair;
  }
  const said = texts.find((words) => ENGLISH.patterns.fan.test(words));
  if (said === undefined) return { plain: null, fan: null, both: false, runs: null };
  return ENGLISH.patterns.noFan.test(said)
    ? { plain: kept, fan: kept - FAN_C * 1000, both: false, runs: false }
    : { plain: kept + FAN_C * 1000, fan: kept, both: false, runs: true };
}

/** Both settings that words give, where the kept one is among them; null where they don't, or nobody can tell which. */
function pairIn(text: string, kept: number): OvenSettings | null {
  const written = temperaturesIn(text);
  const plain = written.filter(({ fan }) => !fan);
  const fans = written.filter(({ fan }) => fan);
  if (plain.length === 0 || fans.length === 0) return null;
  const isKept = (each: Written) => isOf(each, kept);
  const ofPlain = plain.find(isKept);
  const ofFan = fans.find(isKept);
  const fan = ofFan ?? fans[0];
  const other = ofPlain ?? plain.find(({ unit }) => unit === fan?.unit) ?? plain[0];
  // Words that the kept number is not in are older than it, and one that is both says nothing.
  const unclear = { plain: null, fan: null, both: false, runs: null };
  if (!fan || !other || (ofPlain === undefined) === (ofFan === undefined)) return unclear;
  // Of two settings for one dish that of the fan is the lower one.
  if (fans.some(({ milliC }) => plain.some((each) => each.milliC <= milliC))) return unclear;
  return ofPlain
    ? { plain: kept, fan: fan.milliC, both: true, runs: false }
    : { plain: other.milliC, fan: kept, both: true, runs: true };
}

/** Whether a written temperature is the kept one, or what cookbooks print for it. */
function isOf({ milliC, unit }: Written, kept: number): boolean {
  const exact = degreesIn(kept, unit);
  const said = Math.round(degreesIn(milliC, unit));
  return Math.abs(exact - said) < 0.5 || isUsualRounding(said, exact, unit);
}

/** Degrees from which a number without a unit is Fahrenheit: no oven of a kitchen is as hot in Celsius. */
const FAHRENHEIT = 290;

/** The temperatures in a text; one without a unit has that of the next one. */
function temperaturesIn(text: string): Written[] {
  const found = [...text.matchAll(OVEN_DEGREES)];
  return found.map((match, index) => {
    const { number = '', unit: own, before, behind } = match.groups ?? {};
    const next = found.slice(index).find(({ groups }) => groups?.['unit'])?.groups?.['unit'];
    const value = Number(number);
    const byValue = value >= FAHRENHEIT ? 'F' : 'C';
    const unit = (own ?? next ?? byValue).toUpperCase() === 'F' ? 'F' : 'C';
    const milliC = unit === 'C' ? value * 1000 : fromFahrenheit(value);
    return { milliC, unit, fan: before !== undefined || behind !== undefined };
  });
}
