const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const MONTHS = [
  'Jan',
  'Feb',
  'Mar',
  'Apr',
  'May',
  'Jun',
  'Jul',
  'Aug',
  'Sep',
  'Oct',
  'Nov',
  'Dec',
] as const;

/** A local date in short: `printDay('2026-12-12')` → `'Sat 12 Dec'`. Text that is no date comes back as it is. */
export function printDay(date: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!match) return date;
  const [year, month, day] = match.slice(1).map(Number);
  const weekday = DAYS[new Date(Date.UTC(year ?? 0, (month ?? 1) - 1, day)).getUTCDay()];
  return `${weekday} ${day} ${MONTHS[(month ?? 1) - 1]}`;
}

/** A local date without its weekday: `printDayOfMonth('2026-11-14')` → `'14 Nov'`. */
export function printDayOfMonth(date: string): string {
  const day = printDay(date);
  return day === date ? date : day.slice(day.indexOf(' ') + 1);
}
