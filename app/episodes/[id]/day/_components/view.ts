import type { Choice } from '../../../../_ui/form/field';
import type { FilmingDay } from '#lib/episode/day-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { StepLink } from '#lib/episode/step-schema';
import type { DaySheet } from '#lib/shoot/day-sheet';
import type { LikelyWords } from '#lib/shoot/likely-words';
import type { PinCost, PinTry } from '#lib/shoot/pin-cost';
import type { ShootPlan } from '#lib/shoot/plan';
import { PLACE_WAY_WORDS } from '#lib/shoot/day-place';
import { printDay } from '#lib/units/print-date';
import type { DayOfEpisode } from '#lib/store/read-days';
import type { SpanRow } from '#lib/store/read-step-ties';
import { withDay } from '../asked-day';

/** What every part of the day page draws from. */
export interface DayPage {
  readonly file: EpisodeFile;
  readonly day: FilmingDay;
  /** All filming days of the episode, by date. */
  readonly days: readonly DayOfEpisode[];
  /** An episode that may be filmed on the day too, to choose what of it; or those there are to choose from. */
  readonly adding: Adding | null;
  readonly plan: ShootPlan;
  /** Whether a better order is still looked for. */
  readonly searching: boolean;
  readonly sheet: DaySheet;
  /** Null while a better order is looked for, and where the order breaks a rule. */
  readonly likely: LikelyWords | null;
  /** Stretches of the perishable lots, as their rows. */
  readonly spans: readonly SpanRow[];
  /** Revision of each row by its id, for forms that change it. */
  readonly revs: Readonly<Record<string, number>>;
  /** The row whose form stands open, or null. */
  readonly editing: string | null;
  /** A step tied to a clock time to see what that costs, or null. */
  readonly tried: { readonly pin: PinTry; readonly cost: PinCost } | null;
  /** The row that was just saved, whose segment stays open, or null. */
  readonly at: string | null;
}

/** What is asked for in adding another episode to the day. */
export type Adding =
  | { readonly kind: 'which'; readonly episodes: readonly Titled[] }
  | { readonly kind: 'what'; readonly episode: Titled; readonly segments: readonly Titled[] };

interface Titled {
  readonly id: string;
  readonly title: string;
}

/** The day that addresses of the page name: none where the episode has one day alone. */
export function dayNamed({ days, day }: Pick<DayPage, 'days' | 'day'>): string | null {
  return days.length > 1 ? day.id : null;
}

/** Address of the day page with a query, or of a page below it. */
export function dayHref(page: Pick<DayPage, 'file' | 'days' | 'day'>, rest = ''): string {
  return withDay(`/episodes/${page.file.episode.id}/day${rest}`, dayNamed(page));
}

/** Revision of a row; one that the page does not know is refused by the store as changed elsewhere. */
export function revOf(page: Pick<DayPage, 'revs'>, rowId: string): number {
  return page.revs[rowId] ?? 0;
}

/** On which of several days a segment is done, and what of it; null where the episode has one day alone. */
export function daysWords({ days, day }: Pick<DayPage, 'days' | 'day'>, id: string): string | null {
  if (days.length < 2) return null;
  const said = days.flatMap((each) =>
    each.places
      .filter(({ segmentId }) => segmentId === id)
      .map(({ part, pickup }) => {
        const on = each.id === day.id ? 'this day' : printDay(each.date);
        return `${on}: ${PLACE_WAY_WORDS[pickup ? 'pickup' : part]}`;
      }),
  );
  return said.length === 0 ? ', on no day yet' : `, ${said.join('; ')}`;
}

type Addressed = Pick<DayPage, 'file' | 'days' | 'day'>;

/** Address of the day page with a row's form open. */
export function editHref(page: Addressed, row: string): string {
  return dayHref(page, `?edit=${encodeURIComponent(row)}#row-${row}`);
}

/** Address of the day page at a row, with no form open. */
export function rowHref(page: Addressed, row: string): string {
  return dayHref(page, `?at=${encodeURIComponent(row)}#row-${row}`);
}

/** Address of the day page that says what it costs to tie a step to a clock time. */
export function pinHref(page: Addressed, { stepId, when, min }: PinTry): string {
  const asked = new URLSearchParams({ pin: stepId, when, to: String(min) });
  return dayHref(page, `?${asked.toString()}#pinned`);
}

/** Names a row that is not there yet: of a segment, a lot (span) or a day (appointment). */
export function newRow(
  what: 'step' | 'method' | 'shot' | 'link' | 'pin' | 'lot' | 'span' | 'appointment',
  parentId: string,
): string {
  return `new-${what}-${parentId}`;
}

/** Names the row that says what is done of a segment on the day. */
export function onDayRow(segmentId: string): string {
  return `on-day-${segmentId}`;
}

/** Whether one of these rows is being edited or was just saved, so that what holds it stands open. */
export function standsOpen(
  page: Pick<DayPage, 'editing' | 'at'>,
  rows: readonly string[],
): boolean {
  return [page.editing, page.at].some((row) => row !== null && rows.includes(row));
}

/** The title of a step anywhere in the episode; its id where nothing has it. */
export function stepTitle(segments: readonly Segment[], stepId: string): string {
  const step = segments.flatMap(({ steps }) => steps).find(({ id }) => id === stepId);
  return step?.title ?? stepId;
}

/** Every step of the episode to choose from, with its segment; those of `first` first. */
export function stepChoices(page: Pick<DayPage, 'file'>, first: readonly Segment[] = []): Choice[] {
  const segments = [...new Set([...first, ...page.file.episode.segments])];
  return segments.flatMap(({ title, steps }) =>
    steps.map((step) => ({ value: step.id, words: `${step.title} (${title})` })),
  );
}

/** What ties the steps of a segment to those before them. */
export function linksInto(page: Pick<DayPage, 'file'>, segment: Segment): StepLink[] {
  const own = new Set(segment.steps.map(({ id }) => id));
  return page.file.episode.links.filter(({ toStepId }) => own.has(toStepId));
}

/** The rows of these ties, and the one that may be added. */
export function linkRows(page: Pick<DayPage, 'file'>, segment: Segment): string[] {
  return [newRow('link', segment.id), ...linksInto(page, segment).map(({ id }) => id)];
}

/** The rows of a segment's shots, and the one that may be added. */
export function shotRows(segment: Segment): string[] {
  return [newRow('shot', segment.id), ...segment.shots.map(({ id }) => id)];
}

/** The clock times that steps of a segment wait for. */
export function pinsOf(page: Pick<DayPage, 'day'>, segment: Segment): FilmingDay['pins'] {
  const own = new Set(segment.steps.map(({ id }) => id));
  return page.day.pins.filter(({ stepId }) => own.has(stepId));
}

/** When a lot stands out; a stretch that leads to a removed step is left out, as it is in the plan. */
export function spansOf(page: Pick<DayPage, 'file' | 'spans'>, lotId: string): SpanRow[] {
  const { segments } = page.file.episode;
  const steps = new Set(segments.flatMap((segment) => segment.steps.map(({ id }) => id)));
  return page.spans.filter(
    ({ perishableId, fromStepId, toStepId }) =>
      perishableId === lotId && steps.has(fromStepId) && steps.has(toStepId),
  );
}

/** The rows of a segment's lots and their stretches, those that may be added to them included. */
export function lotRows(page: Pick<DayPage, 'file' | 'spans'>, segment: Segment): string[] {
  return segment.perishables.flatMap(({ id }) => [
    id,
    newRow('span', id),
    ...spansOf(page, id).map((span) => span.id),
  ]);
}
