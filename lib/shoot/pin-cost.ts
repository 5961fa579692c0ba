import type { EpisodeFile } from '#lib/episode/schema';
import { clockText, minutesText } from '#lib/shoot/day-words';
import type { ShootPlan } from '#lib/shoot/plan';
import { pinColumns, pinTimeWords, type PinWhen } from '#lib/shoot/pins';

/** A step tied to a clock time, tried out and not yet kept. */
export interface PinTry {
  readonly stepId: string;
  readonly when: PinWhen;
  readonly min: number;
}

/** What a pin does to the day. */
export interface PinCost {
  /** `'Say hello at 09:40'`. */
  readonly pin: string;
  /** What it costs, first of all at the wrap; one sentence each. */
  readonly words: readonly string[];
  /** False where no order is known that keeps it and every other rule. */
  readonly canBeKept: boolean;
}

/** The file with a day of its own on which the step is pinned so, in place of any pin that it has. */
export function withPin(file: EpisodeFile, { stepId, when, min }: PinTry): EpisodeFile {
  const { day } = file;
  if (day === null) return file;
  const pin = { id: `pin-${stepId}`, stepId, ...pinColumns(when, min) };
  return {
    ...file,
    day: {
      ...day,
      id: `${day.id} tried`,
      pins: [...day.pins.filter((each) => each.stepId !== stepId), pin],
    },
  };
}

/**
 * What it costs to pin a step, from the plans without the pin and with it (`withPin`).
 *
 * @example pinCost(before, after, { stepId: 'hello', when: 'notBefore', min: 600 }).words
 *   // ['The day wraps at 16:45, 13 min later.', '4 other things move.']
 */
export function pinCost(before: ShootPlan, after: ShootPlan, tried: PinTry): PinCost {
  const title = before.entries.find(({ stepId }) => stepId === tried.stepId)?.title ?? '';
  const pin = `${title} ${pinTimeWords(pinColumns(tried.when, tried.min))}`;
  if (after.status === 'stuck') {
    const why = after.clash.length > 0 ? after.clash : after.broken.map(({ message }) => message);
    const first =
      after.proof.status === 'clash'
        ? 'No order keeps this beside every other rule. Together they cannot be kept:'
        : 'No order that keeps this and every other rule is found yet. The best one breaks:';
    return { pin, words: [first, ...why], canBeKept: false };
  }
  return {
    pin,
    words: [wrapWords(before, after), movedWords(before, after, tried)],
    canBeKept: true,
  };
}

function wrapWords(before: ShootPlan, after: ShootPlan): string {
  const later = after.wrapMin - before.wrapMin;
  const at = clockText(after.wrapMin);
  // A better order may have been found meanwhile, or by chance.
  if (later < 0) return `The day wraps at ${at}, ${minutesText(-later)} earlier.`;
  return later === 0
    ? `The day still wraps at ${at}.`
    : `The day wraps at ${at}, ${minutesText(later)} later.`;
}

function movedWords(before: ShootPlan, after: ShootPlan, { stepId }: PinTry): string {
  const was = new Map(before.entries.map(({ id, startMin }) => [id, startMin]));
  const moved = after.entries.filter(
    (entry) => entry.stepId !== stepId && was.has(entry.id) && was.get(entry.id) !== entry.startMin,
  );
  const [only] = moved;
  if (only === undefined) return 'Nothing else moves.';
  return moved.length === 1 ? `${only.title} moves too.` : `${moved.length} other things move.`;
}
