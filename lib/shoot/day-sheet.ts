import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import type { Shot } from '#lib/episode/step-schema';
import { FOLLOW_LOCAL_CODE, sourceText, type Caution } from '#lib/safety/caution';
import { dayCautions, insideTemperatures, type InsideTemperature } from '#lib/shoot/day-cautions';
import { dayFacts, type DayFacts } from '#lib/shoot/day-facts';
import { clockText, degreesText, minutesText } from '#lib/shoot/day-words';
import { daylightAt, inDaylight, type Daylight } from '#lib/shoot/daylight';
import { keptDishes } from '#lib/shoot/kept-dishes';
import { changeMin, floorMin } from '#lib/shoot/minutes';
import type { LotClock, PlanEntry, ShootPlan } from '#lib/shoot/plan';
import { ovenPauses } from '#lib/shoot/oven-pauses';
import { handsToWash } from '#lib/shoot/wash-hands';

/** A column of the day: the pair of hands, an oven, or what runs by itself outside the ovens. */
export interface DaySheetColumn {
  readonly id: string;
  readonly title: string;
}

/** An entry in a column; one that takes hands and an oven stands in both. */
export interface DaySheetBlock {
  readonly columnId: string;
  readonly entryId: string;
  readonly startMin: number;
  readonly endMin: number;
  readonly title: string;
  readonly kind: PlanEntry['kind'];
}

/** One line of the day in the order of doing, with all that is said beside it. */
export interface DaySheetRow {
  readonly entry: PlanEntry;
  readonly columnIds: readonly string[];
  readonly segmentTitle: string | null;
  /** The appliance that it runs in, by name. */
  readonly appliance: string | null;
  readonly shots: readonly Shot[];
  readonly inside: InsideTemperature | null;
  readonly note: string;
  /**
   * What to mind: out of daylight, an oven to switch off, a temperature below the chart, cooling what is kept, hands to
   * wash.
   */
  readonly remarks: readonly string[];
}

/** A step that must come soon after another, as planned: hot, fresh, before it sets. */
export interface SoonAfter {
  readonly stepId: string;
  readonly fromStepId: string;
  readonly text: string;
}

/** The day sheet as data, for page and paper alike; nothing in it depends on how it is drawn. */
export interface DaySheet {
  readonly daylight: Daylight | null;
  readonly columns: readonly DaySheetColumn[];
  readonly blocks: readonly DaySheetBlock[];
  readonly rows: readonly DaySheetRow[];
  readonly soonAfter: readonly SoonAfter[];
  readonly lots: readonly LotClock[];
  readonly cautions: readonly Caution[];
  readonly localCode: string;
}

export const HANDS_COLUMN = 'hands';
export const BY_ITSELF_COLUMN = 'by-itself';

/** What a filming day looks like on paper: columns and blocks by the clock, rows, clocks, cautions of all its episodes. */
export function daySheet(given: DayFile, plan: ShootPlan): DaySheet {
  const file = filmedTogether(given);
  const facts = dayFacts(file);
  const episodes = [given.episode, ...(given.also ?? [])].map(({ title }) => title);
  const daylight = daylightAt(file.kitchen, plan.date);
  const inside = new Map(
    facts.segments
      .flatMap((segment) => insideTemperatures(file, segment))
      .map((entry) => [entry.stepId, entry]),
  );
  const unused = unusedOvens(facts, plan);
  const kept = keptDishes(facts, plan.entries, file.episode.region);
  const washed = handsToWash(facts, plan.entries);
  const pauses = ovenPauses(facts, plan.entries);
  const rows = plan.entries.map((entry): DaySheetRow => {
    const found = facts.stepById.get(entry.stepId ?? '');
    const reached = inside.get(entry.stepId ?? '') ?? null;
    const lit = found?.step.daylight === true && isLit(daylight, entry) === false;
    const below = reached?.below ?? null;
    const off = unused.get(entry.id);
    const cooling = kept.get(entry.stepId ?? '');
    const wash = washed.get(entry.id);
    return {
      entry,
      columnIds: columnsOf(entry),
      segmentTitle: besideTitle(entry, facts, episodes),
      appliance: facts.appliances.find(({ id }) => id === found?.step.applianceId)?.name ?? null,
      shots: (found?.segment.shots ?? []).filter((shot) => shot.stepId === found?.step.id),
      inside: reached,
      note: found?.step.note ?? '',
      remarks: [
        ...(lit ? [`needs daylight, and ${daylightText(daylight)}`] : []),
        ...(below === null ? [] : [`${below.text} (${sourceText(below.source)})`]),
        ...(off === undefined ? [] : [off]),
        ...(cooling === undefined ? [] : [cooling]),
        ...(wash === undefined ? [] : [wash]),
        ...[pauses.get(entry.id) ?? []].flat(),
      ],
    };
  });
  return {
    daylight,
    columns: [
      { id: HANDS_COLUMN, title: 'Hands' },
      ...facts.ovens.map((oven) => ({ id: oven.id, title: oven.name })),
      { id: BY_ITSELF_COLUMN, title: 'By itself' },
    ],
    blocks: plan.entries.flatMap((entry) =>
      columnsOf(entry).map((columnId) => ({
        columnId,
        entryId: entry.id,
        startMin: entry.startMin,
        endMin: entry.endMin,
        title: entry.title,
        kind: entry.kind,
      })),
    ),
    rows,
    soonAfter: soonAfter(file, facts, plan),
    lots: plan.lots,
    cautions: dayCautions(file, facts.segments),
    localCode: FOLLOW_LOCAL_CODE,
  };
}

/** The title of an entry's segment; without its episode where the entry's own title says that already. */
function besideTitle(
  entry: PlanEntry,
  facts: DayFacts,
  episodes: readonly string[],
): string | null {
  const title = facts.segments.find(({ id }) => id === entry.segmentId)?.title ?? null;
  const said = episodes
    .map((episode) => ` (${episode})`)
    .find((words) => entry.title.endsWith(words) && title?.endsWith(words));
  return said === undefined ? title : (title?.slice(0, -said.length) ?? null);
}

/** The sun in words. `daylightText({…})` → "the sun is up from 06:12 to 18:22" */
export function daylightText(daylight: Daylight | null): string {
  if (daylight === null) return 'when the sun is up is not known';
  if (daylight.kind === 'alwaysUp') return 'the sun does not set';
  if (daylight.kind === 'alwaysDown') return 'the sun does not rise';
  return `the sun is up from ${clockText(daylight.riseMin)} to ${clockText(daylight.setMin)}`;
}

function columnsOf(entry: PlanEntry): string[] {
  const own = [...(entry.hands ? [HANDS_COLUMN] : []), ...(entry.ovenId ? [entry.ovenId] : [])];
  return own.length > 0 ? own : [BY_ITSELF_COLUMN];
}

function isLit(daylight: Daylight | null, entry: PlanEntry): boolean | null {
  return inDaylight(daylight, entry.startMin, entry.endMin);
}

/** Remarks for uses before which the oven stands unused long enough to be switched off. */
function unusedOvens(facts: DayFacts, plan: ShootPlan): Map<string, string> {
  const remarks = new Map<string, string>();
  for (const oven of facts.ovens) {
    const uses = plan.entries.filter((e) => e.kind === 'step' && e.ovenId === oven.id);
    let freeMin = Number.POSITIVE_INFINITY;
    let milliC: number | null = null;
    for (const use of uses) {
      const heating = changeMin(oven, oven.coldMilliC, use.milliC ?? oven.coldMilliC);
      if (use.milliC === milliC && use.startMin - freeMin > 2 * heating) {
        remarks.set(
          use.id,
          `${oven.name} stands unused from ${clockText(freeMin)}: switch it off, and on again by ${clockText(use.startMin - heating)}`,
        );
      }
      freeMin = use.milliC === milliC ? Math.max(freeMin, use.endMin) : use.endMin;
      milliC = use.milliC;
    }
  }
  return remarks;
}

/** Greatest lags of the day with what the plan makes of them, in the order of the clock. */
function soonAfter(file: DayFile, facts: DayFacts, plan: ShootPlan): SoonAfter[] {
  const byStep = new Map(plan.entries.map((entry) => [entry.stepId ?? '', entry]));
  return facts.links
    .flatMap((link) => {
      const from = byStep.get(link.fromStepId);
      const to = byStep.get(link.toStepId);
      if (link.maxLagS === null || from === undefined || to === undefined) return [];
      const fromMin = link.fromAnchor === 'start' ? from.startMin : from.endMin;
      const toMin = link.toAnchor === 'start' ? to.startMin : to.endMin;
      const heat =
        from.milliC === null ? '' : `, out of ${degreesText(from.milliC, file.episode.region)}`;
      const reason = link.reason === '' ? '' : `: ${link.reason}`;
      const does = link.toAnchor === 'start' ? '' : 'end of ';
      const text = `${clockText(toMin)} ${does}${to.title}, at most ${minutesText(floorMin(link.maxLagS))} after ${from.title} (${clockText(fromMin)}${heat})${reason}`;
      return [{ stepId: link.toStepId, fromStepId: link.fromStepId, text, toMin }];
    })
    .sort((a, b) => a.toMin - b.toMin || (a.text < b.text ? -1 : 1))
    .map(({ stepId, fromStepId, text }) => ({ stepId, fromStepId, text }));
}
