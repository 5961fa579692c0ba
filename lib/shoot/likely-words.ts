import type { DayFile } from '#lib/episode/also-filmed';
import { dayFacts, stepTitle, type DayFacts } from '#lib/shoot/day-facts';
import { daylightText } from '#lib/shoot/day-sheet';
import { clockText, minutesText } from '#lib/shoot/day-words';
import { daylightAt } from '#lib/shoot/daylight';
import type { Likely, PromiseKept } from '#lib/shoot/likely';
import type { ChangeTried, DayChange } from '#lib/shoot/likely-changes';
import { ceilMin } from '#lib/shoot/minutes';
import type { ShootPlan } from '#lib/shoot/plan';
import { ruleInWords } from '#lib/shoot/rule-words';

/** Something promised, how often it is kept, and where the true share lies. */
export interface PromiseLine {
  readonly promise: string;
  readonly often: string;
  readonly between: string;
}

/** How likely the day is, ready to be read. */
export interface LikelyWords {
  readonly wrap: string;
  /** What is kept least often; null where everything is kept always. */
  readonly weakest: PromiseLine | null;
  /** Promises that are not kept always, the weakest first, and those that are. */
  readonly loose: readonly PromiseLine[];
  readonly always: readonly PromiseLine[];
  readonly helps: string;
  /** What to leave out first; null where leaving nothing out helps, or that is what helps most anyway. */
  readonly cut: string | null;
  readonly alsoHelps: readonly string[];
  /** The entries that the wrap hangs on, in the order of the chain that it hangs on most often. */
  readonly chain: readonly {
    readonly id: string;
    readonly title: string;
    readonly often: string;
  }[];
  /** What it comes from; and what all of `always` are. */
  readonly how: string;
  readonly alwaysKept: string;
}

/** So many changes are told beside the one that helps most. */
const MOST_CHANGES = 5;

/** How likely the day is, in the words of its page. */
export function likelyInWords(likely: Likely, file: DayFile, plan: ShootPlan): LikelyWords {
  const facts = dayFacts(file);
  const { runs, wrapMin, promises, changes, critical } = likely;
  const sun = daylightText(daylightAt(file.kitchen, facts.day.date));
  const line = (one: PromiseKept): PromiseLine => ({
    promise: promiseText(one, facts, sun),
    often: keptText(one.kept, runs),
    between: `between ${Math.floor(one.low * 100)} and ${Math.ceil(one.high * 100)}`,
  });
  const loose = promises.filter(({ kept }) => kept < runs).map(line);
  const [best, ...rest] = changes;
  const cut = changes.find(({ change }) => change.kind === 'drop');
  const entryOf = new Map(plan.entries.map((entry) => [entry.id, entry]));
  const runsOf = new Map(critical.map((one) => [one.id, one.runs]));
  return {
    wrap: `Wrap by ${clockText(wrapMin.p50)} on one day in two, by ${clockText(wrapMin.p90)} on nine days in ten.${asPlanned(plan.wrapMin, wrapMin.p50)}`,
    weakest: loose[0] ?? null,
    loose,
    always: promises.filter(({ kept }) => kept === runs).map(line),
    helps:
      best === undefined
        ? 'No single change that was tried helps.'
        : `What helps most: ${changeText(best.change, facts)}. ${effectText(best)}`,
    cut:
      cut === undefined || cut === best
        ? null
        : `What to cut first: ${changeText(cut.change, facts)}. ${effectText(cut)}`,
    alsoHelps: rest
      .slice(0, MOST_CHANGES)
      .map((tried) => `${sentence(changeText(tried.change, facts))}. ${effectText(tried)}`),
    chain: likely.chain.flatMap((id) => {
      const entry = entryOf.get(id);
      if (entry === undefined) return [];
      return [{ id, title: entry.title, often: shareText(runsOf.get(id) ?? 0, runs) }];
    }),
    alwaysKept: `Kept on all ${runs} days tried:`,
    how: `From ${runs} days made up by chance: each step takes between its shortest and its longest time, most often its usual one, and the order stays as it is.`,
  };
}

/** Why the plan's wrap is another one: steps that take longer than usual push it back, shorter ones seldom bring it forward. */
function asPlanned(plannedMin: number, usuallyMin: number): string {
  if (plannedMin === usuallyMin) return '';
  return ` The plan says ${clockText(plannedMin)}: so it is where every step takes its usual time.`;
}

/**
 * How often of 100 days. All and none are said only where nothing else happened.
 *
 * @example keptText(1939, 2000) // 'kept in 97 of 100 days like this'
 */
export function keptText(kept: number, runs: number): string {
  if (kept === runs) return `kept on all ${runs} days tried`;
  if (kept === 0) return `kept on none of ${runs} days tried`;
  return `kept in ${shareText(kept, runs)} days like this`;
}

function shareText(count: number, runs: number): string {
  if (count === runs) return '100 of 100';
  const of100 = Math.round((100 * count) / runs);
  if (of100 === 100) return 'more than 99 of 100';
  return of100 === 0 ? 'fewer than 1 of 100' : `${of100} of 100`;
}

function promiseText({ kind, id, atMin }: PromiseKept, facts: DayFacts, sun: string): string {
  const own = id.slice(id.indexOf(':') + 1);
  const at = clockText(atMin ?? 0);
  switch (kind) {
    case 'end':
      return id.startsWith('start:')
        ? `${stepTitle(facts, own)} begins by ${at}.`
        : `${stepTitle(facts, own)} is over by ${at}.`;
    case 'free': {
      const calls = facts.day.appointments.filter((call) => call.hands && call.startMin === atMin);
      const names = calls.map(({ title }) => title).join(', ');
      return names === ''
        ? `What comes before ${at} is over by then.`
        : `Hands are free for ${names} at ${at}.`;
    }
    case 'daylight':
      return `${stepTitle(facts, own)} lies in daylight: ${sun}.`;
    case 'lag':
    case 'limit':
    case 'horizon':
      return ruleInWords(id, facts);
  }
}

function changeText(change: DayChange, facts: DayFacts): string {
  switch (change.kind) {
    case 'shortest': {
      const low = facts.stepById.get(change.stepId)?.step.lowS ?? 0;
      return `${stepTitle(facts, change.stepId)} in its shortest time, ${minutesText(ceilMin(low))}`;
    }
    case 'drop':
      return `leave out ${stepTitle(facts, change.stepId)}`;
    case 'startEarlier':
      return `start ${minutesText(change.minutes)} earlier, at ${clockText(facts.day.startMin - change.minutes)}`;
    case 'moreBurners':
      return 'one more burner';
    case 'moreRacks': {
      const oven = facts.ovens.find(({ id }) => id === change.ovenId);
      return `one more rack in ${oven?.name ?? 'the oven'}`;
    }
  }
}

function effectText({ savedMin, weakestBefore, weakestAfter }: ChangeTried): string {
  const minutes = Math.round(savedMin);
  const [before, after] = [weakestBefore, weakestAfter].map((share) => Math.round(100 * share));
  const wrap = minutes >= 1 ? [`nine days in ten then wrap ${minutesText(minutes)} earlier`] : [];
  const kept =
    (after ?? 0) > (before ?? 0)
      ? [`the weakest promise is then kept in ${after} of 100 days instead of ${before}`]
      : [];
  return `${sentence([...kept, ...wrap].join('; '))}.`;
}

function sentence(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
