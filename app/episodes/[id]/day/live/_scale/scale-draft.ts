import type { DayDish } from '#lib/overview/dishes-on-day';
import type { OnScale } from '#lib/shoot/scale-entries';

/** What is chosen and typed at the scale and not kept yet; a reload loses none of it. */
export interface ScaleDraft {
  readonly segmentId: string;
  /** Null for the finished dish. */
  readonly lineId: string | null;
  readonly of: OnScale['of'];
  readonly way: OnScale['way'];
  readonly scaleId: string | null;
  readonly digits: string;
  readonly containerMg: number;
}

const keyOf = (dayId: string) => `scale:${dayId}`;

/** The draft that this tab has kept, if its dish is still there. */
export function readDraft(dayId: string, dishes: readonly DayDish[]): ScaleDraft | null {
  try {
    const draft = JSON.parse(sessionStorage.getItem(keyOf(dayId)) ?? 'null') as ScaleDraft | null;
    const dish = dishes.find(({ segmentId }) => segmentId === draft?.segmentId);
    if (draft === null || dish === undefined || typeof draft.digits !== 'string') return null;
    const there = draft.lineId === null || dish.lines.some(({ id }) => id === draft.lineId);
    return there ? draft : null;
  } catch {
    return null;
  }
}

/** Keeps the draft for a reload, where the browser keeps anything. */
export function keepDraft(dayId: string, draft: ScaleDraft): void {
  try {
    sessionStorage.setItem(keyOf(dayId), JSON.stringify(draft));
  } catch {
    // Typed again after a reload.
  }
}
