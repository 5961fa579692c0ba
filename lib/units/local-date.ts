import { TZDate } from '@date-fns/tz';
import { format } from 'date-fns/format';

/**
 * The date that an instant has in a time zone. Late in the evening UTC it is tomorrow in Copenhagen.
 * `localDate(new Date('2026-12-11T23:30:00Z'), 'Europe/Copenhagen')` → `'2026-12-12'`.
 * A zone that nobody knows counts as UTC.
 */
export function localDate(at: Date, zone: string): string {
  return inZone(at, zone, 'yyyy-MM-dd');
}

/** An instant as read in a time zone: `'Sat 12 Dec, 18:02'`. */
export function localMoment(at: Date, zone: string): string {
  return inZone(at, zone, 'EEE d MMM, H:mm');
}

/** Whether a text names a time zone of the IANA database, as in `Europe/Copenhagen`. */
export function isZone(zone: string): boolean {
  return zone !== '' && !Number.isNaN(new TZDate(0, zone).getTime());
}

function inZone(at: Date, zone: string, pattern: string): string {
  return format(new TZDate(at.getTime(), isZone(zone) ? zone : 'UTC'), pattern);
}
