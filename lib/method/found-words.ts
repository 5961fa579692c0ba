import type { Episode } from '#lib/episode/schema';
import type { Learnt } from '#lib/method/learnt-minutes';
import type { Place, Setting, Stretch } from '#lib/method/method-step';
import type { MethodStep } from '#lib/method/read-method';
import { degreesText } from '#lib/shoot/day-words';
import { minutesSaid, minutesTyped } from '#lib/units/read-typed';

/** Something that was read, and the words it was read from; null where no words say it. */
export interface Found {
  readonly what: string;
  readonly from: string | null;
}

const PLACES: Readonly<Record<Place, string>> = {
  oven: 'in the oven',
  'air fryer': 'in the air fryer',
  grill: 'under or on the grill',
  microwave: 'in the microwave',
  burner: 'on a burner',
  fridge: 'in the fridge',
  freezer: 'in the freezer',
  none: '',
};

/** A setting as it is printed. `settingText({ value: 160, unit: 'C', fan: true })` → `'160 °C fan'`. */
export function settingText({ value, unit, fan }: Setting): string {
  return `${unit === 'gas' ? `gas mark ${value}` : `${value} °${unit}`}${fan ? ' fan' : ''}`;
}

/**
 * What was read of a step, in words, each with the words of the text it comes from: its minutes, where, whose work,
 * the oven's and the inside temperature. Minutes that no words say are called a guess, unless they were learnt.
 * @param learnt what the step took in this kitchen; null where that is not known
 */
export function foundWords(
  text: string,
  step: MethodStep,
  region: Episode['region'],
  learnt: Learnt | null = null,
): Found[] {
  const { read, oven, insideMilliC } = step;
  const words = (of: Stretch | null) => (of ? closed(text, of) : null);
  const place = PLACES[read.equipment];
  return [
    read.minutes === null
      ? { what: `no minutes in the text: ${learnt?.words ?? 'a guess'}`, from: null }
      : { what: timeText(step), from: words(read.minutesFrom) },
    ...(read.minutes === null || learnt === null
      ? []
      : [{ what: `it took ${learnt.times} here`, from: null }]),
    ...(place === '' ? [] : [{ what: place, from: null }]),
    { what: read.hands === 'by hand' ? 'hands' : 'by itself', from: null },
    ...(oven
      ? [
          {
            what: `${degreesText(oven.milliC, region)}${oven.earlier ? ', said before it' : ''}`,
            from: words(oven.from),
          },
        ]
      : read.degrees
          .slice(0, 1)
          .map((setting) => ({ what: settingText(setting), from: words(read.degreesFrom) }))),
    ...(insideMilliC === null
      ? []
      : [{ what: `${degreesText(insideMilliC, region)} inside`, from: words(read.insideFrom) }]),
  ];
}

/** Words with the bracket that they open closed. */
function closed(text: string, { start, end }: Stretch): string {
  const written = text.slice(start, end);
  return /\([^)]*$/.test(written) && text[end] === ')' ? `${written})` : written;
}

function timeText({ read, time: { lowS, highS } }: MethodStep): string {
  if (read.minutes?.high === null) return `${minutesSaid(lowS)} or more`;
  if (read.minutes?.low === null) return `up to ${minutesSaid(highS)}`;
  return lowS === highS ? minutesSaid(lowS) : `${minutesTyped(lowS)}–${minutesSaid(highS)}`;
}

/** What a step of the plan has no field for: another place than oven and burner, and degrees said for a fan. */
export function noteOf({ read, oven }: MethodStep): string {
  if (oven) return oven.setting.fan ? `said as ${settingText(oven.setting)}` : '';
  const place =
    read.equipment === 'burner' || read.equipment === 'oven' ? '' : PLACES[read.equipment];
  return [place, ...read.degrees.slice(0, 1).map(settingText)].filter(Boolean).join(', ');
}
