import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import { filmingDaySchema } from '#lib/episode/day-schema';
import { segmentSchema } from '#lib/episode/schema';
import { stepLinkSchema, stepSchema, type StepLink } from '#lib/episode/step-schema';
import { PICKUP_STEP, rowKey } from '#lib/shoot/day-log';
import type { DayFold, DayPickup } from '#lib/shoot/fold-day';
import type { PlanEntry } from '#lib/shoot/plan';
import { openPickups, PICKUPS, pickupTitle } from '#lib/shoot/placed-pickups';
import { taskIdOf } from '#lib/shoot/problem-parts';
import { replanDay, type Replan } from '#lib/shoot/replan';
import type { DayClock } from '#lib/shoot/replan-rows';

/** A pickup that the order has no place for, and why. */
export interface NotPlaced {
  readonly text: string;
  readonly why: string;
}

const TITLE = 'To get later';
/** Pickups that are tried one by one at most, where not all of them can be placed. */
const MOST_TRIED = 4;

/**
 * The rest of the day with what is to be got later in it. A pickup takes hands and camera; one about a step comes
 * after it, and before the plate of its dish is eaten. Where an order with all of them breaks a rule that one without
 * does not, they are tried one by one, and those that break it are left out and named.
 */
export function replanWithPickups(
  file: DayFile,
  promised: readonly PlanEntry[],
  fold: DayFold,
  clock: DayClock,
): { readonly replan: Replan; readonly notPlaced: readonly NotPlaced[] } {
  const open = openPickups(fold);
  const plan = (pickups: readonly DayPickup[]) => {
    const ids = new Set(pickups.map(({ id }) => taskIdOf(PICKUP_STEP + id)));
    const own = promised.filter(({ id, segmentId }) => segmentId !== PICKUPS || ids.has(id));
    return replanDay(withPickups(file, pickups, fold), own, fold, clock);
  };
  if (open.length === 0) return { replan: plan([]), notPlaced: [] };
  const all = plan(open);
  if (all.plan.broken.length === 0) return { replan: all, notPlaced: [] };
  let best = plan([]);
  if (worseBy(all, best).length === 0) return { replan: all, notPlaced: [] };
  const placed: DayPickup[] = [];
  const notPlaced: NotPlaced[] = [];
  for (const [at, pickup] of open.entries()) {
    const tried = at < MOST_TRIED ? plan([...placed, pickup]) : null;
    const worse = tried ? worseBy(tried, best) : ['Those before it have taken the time there is.'];
    if (tried && worse.length === 0) {
      placed.push(pickup);
      best = tried;
    } else notPlaced.push({ text: pickup.text, why: worse[0] ?? '' });
  }
  return { replan: best, notPlaced };
}

/** What a plan breaks that another does not, or breaks further, in words. */
function worseBy({ plan }: Replan, { plan: other }: Replan): string[] {
  const known = new Set(other.broken.map(({ message }) => message));
  return plan.broken.filter(({ message }) => !known.has(message)).map(({ message }) => message);
}

/** The file with a segment of pickups, each a step that is tied to what it is about. */
export function withPickups(given: DayFile, pickups: readonly DayPickup[], fold: DayFold): DayFile {
  const file = filmedTogether(given);
  const { day, episode } = file;
  if (day === null || pickups.length === 0) return file;
  const steps = pickups.map(({ id, text, minutes }) =>
    stepSchema.parse({
      id: PICKUP_STEP + id,
      title: pickupTitle(text),
      role: 'shoot',
      lowS: minutes * 60,
      usualS: minutes * 60,
      highS: minutes * 60,
      choose: null,
      hands: true,
      burners: 0,
      racks: 0,
      oven: null,
      coreMilliC: null,
      restS: 0,
      onCamera: true,
      daylight: false,
      note: '',
    }),
  );
  const segment = segmentSchema.parse({
    id: PICKUPS,
    kind: 'talk',
    title: TITLE,
    batches: { num: 1, den: 1 },
    eaten: { num: 0, den: 1 },
    inFrame: null,
    outFrame: null,
    plannedS: 0,
    recipe: null,
    steps,
    perishables: [],
    shots: [],
    talkingPoints: [],
    spareTakes: 0,
    spareScope: 'whole',
    washUpS: 0,
  });
  const entry = filmingDaySchema.shape.segments.element.parse({
    id: PICKUPS,
    segmentId: PICKUPS,
    pickup: true,
  });
  return {
    ...file,
    day: { ...day, segments: [...day.segments, entry] },
    episode: {
      ...episode,
      segments: [...episode.segments, segment],
      links: [...episode.links, ...pickups.flatMap((pickup) => linksOf(file, pickup, fold))],
    },
  };
}

/** After the step that it is about; before its plate is eaten, unless that has begun. */
function linksOf(file: DayFile, { id, rowKey: about }: DayPickup, fold: DayFold): StepLink[] {
  const stepId = about?.startsWith('step ') ? about.slice('step '.length) : null;
  const segment = file.episode.segments.find(({ steps }) => steps.some((one) => one.id === stepId));
  if (stepId === null || segment === undefined) return [];
  const own = PICKUP_STEP + id;
  const link = (fromStepId: string, toStepId: string, reason: string): StepLink =>
    stepLinkSchema.parse({
      id: `${own}:${fromStepId === own ? 'before' : 'after'}:${fromStepId === own ? toStepId : fromStepId}`.slice(
        0,
        64,
      ),
      fromStepId,
      toStepId,
      fromAnchor: 'end',
      toAnchor: 'start',
      minLagS: 0,
      maxLagS: null,
      reason,
    });
  const eaten = segment.steps.filter(({ id: other, role }) => {
    const key = rowKey({ stepId: other });
    return role === 'eat' && other !== stepId && !fold.startedAt.has(key) && !fold.doneAt.has(key);
  });
  return [
    link(stepId, own, ''),
    ...eaten.map((step) => link(own, step.id, 'while the plate is whole')),
  ];
}
