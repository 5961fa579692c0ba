import type { Before } from '#lib/shoot/day-weighings';
import type { OnScale } from '#lib/shoot/scale-entries';
import { scaleGramsText } from '#lib/units/scale-grams';

interface Props {
  readonly of: OnScale['of'];
  readonly way: OnScale['way'];
  /** What stands in the bowl already, if anything. */
  readonly onTop: Before;
  readonly difference: Before;
  readonly onWay: (way: OnScale['way']) => void;
}

/** How it is weighed: by itself, on top of what is there, or a jar or pan before and after. */
export function ScaleWays({ of, way, onTop, difference, onWay }: Props) {
  const ways: readonly (readonly [OnScale['way'], string, string])[] = [
    ['direct', 'By itself', 'its container comes off'],
    ...(of === 'raw' ? [['total', 'Onto what is there', onTopWords(onTop)] as const] : []),
    ['difference', 'Before and after', differenceWords(of, difference)],
  ];
  return (
    <fieldset className="grid gap-2">
      <legend className="mb-1 font-semibold">How</legend>
      {ways.map(([value, words, hint]) => (
        <label
          key={value}
          className="flex min-h-14 items-center gap-3 border-[1.5px] border-edge bg-paper px-3 py-1 text-lead has-checked:border-ink has-checked:font-semibold"
        >
          <input
            type="radio"
            name="way"
            className="size-6 shrink-0 accent-ink"
            checked={way === value}
            onChange={() => onWay(value)}
          />
          <span>
            {words}
            <span className="block text-fine font-normal text-soft">{hint}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}

/** The way that is chosen, and what the number is held against: "onto what is there, 395 g in the bowl". */
export function wayInWords(of: OnScale['of'], way: OnScale['way'], before: Before): string {
  if (way === 'direct') return 'by itself';
  return way === 'total'
    ? `onto what is there, ${onTopWords(before)}`
    : `before and after, ${differenceWords(of, before)}`;
}

function onTopWords(before: Before): string {
  if (before.kind === 'photo') return 'the photo before it has no number yet';
  if (before.kind === 'nothing') return 'nothing is on the scale yet';
  return `${scaleGramsText(before.weighing.grossMg)} g in the bowl`;
}

function differenceWords(of: OnScale['of'], before: Before): string {
  if (before.kind === 'photo') return 'the photo before it has no number yet';
  if (before.kind === 'reading') {
    return `${scaleGramsText(before.weighing.grossMg)} g before: now after`;
  }
  return of === 'raw' || of === 'cooked' ? 'a jar or a bottle, now before' : 'a pan, now empty';
}
