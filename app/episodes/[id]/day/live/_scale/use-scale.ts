import { useState } from 'react';
import { weighingWords } from '#lib/episode/typed-weighing';
import type { DayDish, DishesOnDay } from '#lib/overview/dishes-on-day';
import type { Entry, RowRef } from '#lib/shoot/day-log';
import {
  beforeDisplay,
  beforeIt,
  typedOf,
  weighedEntry,
  type Before,
  type OpenDisplay,
} from '#lib/shoot/day-weighings';
import { doubtfulWeight } from '#lib/shoot/doubtful-weight';
import { anotherWay, nextHow } from '#lib/shoot/next-on-scale';
import type { OnScale } from '#lib/shoot/scale-entries';
import { inOrderFor, unweighedOf, type Unweighed } from '#lib/shoot/unweighed';
import { readScaleGrams, scaleGramsText } from '#lib/units/scale-grams';
import { unclearNumber } from '#lib/units/printed';
import { afterKey } from './keypad';
import { photoOf, type KeptPhoto } from '../../../../../_sync/photo-bytes';
import { keepDraft, readDraft, type ScaleDraft } from './scale-draft';

export interface ScaleParts {
  readonly dayId: string;
  readonly dishes: readonly DayDish[];
  readonly scales: DishesOnDay['scales'];
  readonly displays: readonly OpenDisplay[];
  /** The step at hand. */
  readonly step: {
    readonly segmentId: string | null;
    readonly title: string;
    readonly ref: RowRef | null;
  };
  readonly onEnter: (entry: Entry) => Promise<void>;
  readonly onPhoto: (photo: KeptPhoto) => Promise<void>;
  readonly onSaid: (words: string) => void;
}

const UNREADABLE = 'Write the grams that the scale shows: 252, 252.5 or 1252.';

/** What is chosen and typed at the scale, and what becomes of it. Null where no dish can be weighed. */
export function useScale(parts: ScaleParts) {
  const { dayId, dishes, displays, step, onEnter, onPhoto, onSaid } = parts;
  const [draft, setDraft] = useState<ScaleDraft | null>(
    () => readDraft(dayId, dishes) ?? firstDraft(dishes, displays, step),
  );
  const [typing, setTyping] = useState<string | null>(null);
  const [fault, setFault] = useState('');
  const [doubt, setDoubt] = useState<string | null>(null);
  const display = displays.find(({ id }) => id === typing) ?? null;
  const chosen = display ? display.recipeId : null;
  const dish =
    dishes.find((one) =>
      chosen === null ? one.segmentId === draft?.segmentId : one.recipeId === chosen,
    ) ?? null;
  if (draft === null || dish === null) return null;

  const own = displays.filter(({ recipeId }) => recipeId === dish.recipeId);
  const unweighed = unweighedOf(dish.lines, dish.weighings, own);
  const scaleId = draft.scaleId ?? dish.scaleId;
  const on: OnScale = display ?? {
    recipeId: dish.recipeId,
    lineId: draft.lineId,
    of: draft.of,
    way: draft.way,
    scaleId: scaleId ?? '',
    containerMg: draft.way === 'direct' ? draft.containerMg : 0,
  };
  const before = display
    ? beforeDisplay(display, dish.weighings)
    : beforeIt(on, dish.weighings, displays);
  const mg = readScaleGrams(draft.digits);
  const refs = step.ref ?? {};

  const change = (some: Partial<ScaleDraft>) => {
    const next = { ...draft, ...some };
    setFault('');
    setDoubt(null);
    keepDraft(dayId, next);
    setDraft(next);
  };
  const clear = (next: Partial<ScaleDraft> = {}) => {
    setTyping(null);
    change({ digits: '', ...next });
  };
  const line = dish.lines.find(({ id }) => id === on.lineId) ?? null;
  const what = line?.text ?? 'the finished dish';
  /** What is likely to be weighed next, in the way that is chosen. */
  const following = (waits: boolean): Partial<ScaleDraft> => {
    if (display) return {};
    if (on.of !== 'raw' || waits) return {};
    const left = unweighed.filter(({ lineId }) => lineId !== on.lineId);
    const next = inOrderFor(step.title, dish.lines, left)[0]?.id ?? on.lineId;
    return { lineId: next, ...nextHow(draft) };
  };
  return {
    draft,
    dish,
    display,
    lines: inOrderFor(step.title, dish.lines, unweighed),
    unweighed,
    scaleId: scaleId ?? '',
    on,
    before,
    onTop: beforeIt({ ...on, way: 'total' }, dish.weighings, displays),
    difference: beforeIt({ ...on, way: 'difference' }, dish.weighings, displays),
    fault,
    doubt,
    what,
    words: mg === null || before.kind === 'photo' ? null : weighingWords(typedOf(on, mg, before)),
    change: (some: Partial<ScaleDraft>) => {
      const other = dishes.find(({ segmentId }) => segmentId === some.segmentId);
      if (!other) return change(some);
      const first = firstDraft([other], displays, step);
      return change({ ...first, digits: draft.digits, ...some });
    },
    changeWay: (way: OnScale['way']) => change(anotherWay(way, draft)),
    press: (key: string) => change({ digits: afterKey(draft.digits, key) }),
    back: () => change({ digits: draft.digits.slice(0, -1) }),
    type: (text: string) => change({ digits: text }),
    /** What the scale shows is the empty container: it comes off the next reading. */
    tare() {
      if (mg === null || mg === 0) return setFault(unclearNumber(draft.digits) ?? UNREADABLE);
      change({ digits: '', containerMg: mg });
      onSaid(`${scaleGramsText(mg)} g come off.`);
    },
    typeDisplay(id: string | null) {
      setTyping(id);
      change({ digits: '' });
    },
    /** @param sure whether somebody says that a weight far from the plan is right */
    async keep(sure: boolean) {
      if (mg === null) return setFault(unclearNumber(draft.digits) ?? UNREADABLE);
      const read = weighedEntry(on, mg, before, display);
      if (!read.ok) return setFault(read.problems[0]?.message ?? '');
      const { of, grossMg, tareMg } = read.value;
      const asked = of === 'raw' ? doubtfulWeight(line?.plannedMg ?? null, grossMg - tareMg) : null;
      if (asked !== null && !sure) return setDoubt(asked);
      const said = weighingWords(typedOf(on, mg, before)) ?? '';
      await onEnter({ kind: 'weighed', refs, payload: read.value });
      onSaid(`Kept, ${what}: ${said}.`);
      clear(following(read.value.of === 'container'));
    },
    async photograph(file: Blob) {
      if (before.kind === 'photo') return setFault('Type the number of the photo before this one.');
      const photo = await photoOf(file);
      if (!photo.ok) return setFault(photo.problems[0]?.message ?? '');
      await onPhoto(photo.value);
      const beforeId = idOf(before);
      const payload = { ...on, beforeId, sha256: photo.value.sha256 };
      await onEnter({ kind: 'display', refs, payload });
      onSaid(`Photo kept of ${what}: type its number when there is time.`);
      clear(following(on.way === 'difference'));
    },
  };
}

export type Scale = NonNullable<ReturnType<typeof useScale>>;

const idOf = (before: Before): string | null =>
  before.kind === 'reading' ? before.weighing.id : null;

function firstDraft(
  dishes: readonly DayDish[],
  displays: readonly OpenDisplay[],
  step: ScaleParts['step'],
): ScaleDraft | null {
  const dish = dishes.find(({ segmentId }) => segmentId === step.segmentId) ?? dishes[0];
  if (!dish) return null;
  const unweighed: readonly Unweighed[] = unweighedOf(
    dish.lines,
    dish.weighings,
    displays.filter(({ recipeId }) => recipeId === dish.recipeId),
  );
  const lineId = inOrderFor(step.title, dish.lines, unweighed)[0]?.id ?? null;
  const { segmentId } = dish;
  const of = lineId === null ? 'finished' : 'raw';
  return { segmentId, lineId, of, way: 'direct', scaleId: null, digits: '', containerMg: 0 };
}
