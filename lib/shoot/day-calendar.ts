import ical, { ICalEventTransparency } from 'ical-generator';
import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import { degreesText } from '#lib/shoot/day-words';
import { calendarText, refold } from '#lib/shoot/ical-fold';
import { instantOf } from '#lib/shoot/local-time';
import type { PlanEntry, ShootPlan } from '#lib/shoot/plan';

/**
 * The shooting order as an iCalendar file (RFC 5545): one event for each entry, in UTC, CRLF, lines of
 * at most 75 octets. What runs by itself is transparent (it leaves the person free). `stamp` is the
 * UTC instant of every DTSTAMP; UIDs come from ids, so a later file updates the same events.
 *
 * An entry of no length has no DTEND, since DTEND must be later than DTSTART (3.6.1 [from memory]).
 */
export function dayCalendar(given: DayFile, plan: ShootPlan, stamp: string): string {
  const file = filmedTogether(given);
  const { kitchen, episode } = file;
  const calendar = ical({
    prodId: { company: 'Scale & Slate', product: 'Day sheet', language: 'EN' },
    name: calendarText(`${episode.title}, ${plan.date}`),
  });
  for (const entry of plan.entries) {
    const event = calendar.createEvent({
      id: `${calendarText(entry.id)}@${plan.dayId}.scale-and-slate`,
      stamp: new Date(stamp),
      start: instantOf(plan.date, entry.startMin, kitchen.zone),
      summary: calendarText(entry.title),
      description: calendarText(describe(file, entry)),
      transparency: entry.hands ? ICalEventTransparency.OPAQUE : ICalEventTransparency.TRANSPARENT,
    });
    if (entry.endMin > entry.startMin) {
      event.end(instantOf(plan.date, entry.endMin, kitchen.zone));
    }
  }
  return refold(calendar.toString());
}

function describe(file: DayFile, entry: PlanEntry): string {
  const { segments, region } = file.episode;
  const segment = segments.find((candidate) => candidate.id === entry.segmentId);
  const oven = file.kitchen.ovens.find((candidate) => candidate.id === entry.ovenId);
  const shots = (segment?.shots ?? []).filter(
    (shot) => shot.stepId !== null && shot.stepId === entry.stepId,
  );
  return [
    ...(segment === undefined ? [] : [segment.title]),
    ...(oven === undefined || entry.milliC === null
      ? []
      : [`${oven.name} at ${degreesText(entry.milliC, region)}`]),
    ...shots.map((shot) => `Shot: ${shot.title}${shot.framing === '' ? '' : `, ${shot.framing}`}`),
    `Why then: ${entry.why}`,
  ].join('\n');
}
