import { contradiction, type Contradiction } from '#lib/claims/contradict/contradiction';
import { areApart, ofValue, timesRange, type SaidValue } from '#lib/claims/contradict/said-values';
import type { Region } from '#lib/figures/line-parts';

/** How many parts a dish is said to have, or has; `as` what they are called. */
export interface SaidCount {
  readonly thing: string;
  readonly as: 'portion' | 'piece' | 'slice';
  readonly low: number;
  readonly high: number;
}

/** A half that is not half of what is said of the whole. */
export function halves(values: readonly SaidValue[], region: Region): Contradiction[] {
  return pairsOf(values, 'half').flatMap(([half, whole]) => {
    if (!areApart(timesRange(half.interval, 2, 2), whole.interval)) return [];
    const right = ofValue((whole.low + whole.high) / 4, whole.nutrient, region);
    return [
      contradiction({
        kind: 'half',
        nutrient: half.nutrient,
        segmentId: half.segmentId,
        words: `half of ${whole.text} is ${right}, not ${half.text}`,
        sides: sidesOf(whole, half),
      }),
    ];
  });
}

const PART = { portion: 'portion', piece: 'each', slice: 'slice' } as const;

/** One portion, piece or slice that does not come to the whole, times as many as there are said to be. */
export function parts(
  values: readonly SaidValue[],
  counts: readonly SaidCount[],
  region: Region,
): Contradiction[] {
  return counts.flatMap(({ thing, as, low, high }) =>
    pairsOf(values, PART[as])
      .filter(([part]) => part.thing === thing)
      .flatMap(([part, whole]) => {
        // Where several numbers of them are said, one that fits is enough.
        const same = counts.filter((other) => other.thing === thing && other.as === as);
        const fits = same.some(
          (other) => !areApart(timesRange(part.interval, other.low, other.high), whole.interval),
        );
        if (fits) return [];
        const many = low === high ? `${low}` : `${low} to ${high}`;
        const right = ofValue(
          ((part.low + part.high) / 2) * ((low + high) / 2),
          part.nutrient,
          region,
        );
        return [
          contradiction({
            kind: 'each',
            nutrient: part.nutrient,
            segmentId: part.segmentId,
            words: `${many} times ${part.text} is ${right}, not ${whole.text}`,
            sides: sidesOf(whole, part),
          }),
        ];
      }),
  );
}

const sidesOf = (whole: SaidValue, part: SaidValue) => [
  { value: whole.text, said: [whole.row] },
  { value: part.text, said: [part.row] },
];

/**
 * Each value of a part with the value of the whole that is said nearest to it. Half may also be of a dish without how
 * much of it, where that is said in the same breath.
 */
function pairsOf(
  values: readonly SaidValue[],
  scope: SaidValue['scope'],
): readonly (readonly [part: SaidValue, whole: SaidValue])[] {
  return values
    .filter((value) => value.scope === scope)
    .flatMap((part) => {
      const same = values.filter(
        ({ thing, nutrient }) => thing === part.thing && nutrient === part.nutrient,
      );
      const whole = same.filter((each) => each.scope === 'whole');
      const near =
        scope === 'half'
          ? same.filter((each) => each.scope === 'dish' && gap(part, each) <= BREATH)
          : [];
      const found = [...near, ...whole];
      const [first] = found;
      if (!first) return [];
      return [
        [
          part,
          found.reduce((best, each) => (gap(part, each) < gap(part, best) ? each : best), first),
        ],
      ] as const;
    });
}

/** UTF-16 units between a half and what it is half of, where that is not said to be the whole. */
const BREATH = 160;

function gap({ row: a }: SaidValue, { row: b }: SaidValue): number {
  if (a.place.textId !== b.place.textId) return Infinity;
  return (
    Math.max(a.statement.start, b.statement.start) - Math.min(a.statement.end, b.statement.end)
  );
}
