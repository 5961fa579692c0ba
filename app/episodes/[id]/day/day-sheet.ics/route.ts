import { dayCalendar } from '#lib/shoot/day-calendar';
import { plannedDay } from '#lib/work/day-searches';
import { readDayFile, type DayContext } from '../read-day-file';

/** The shooting order as a calendar file. */
export async function GET(request: Request, context: DayContext): Promise<Response> {
  const now = new Date().toISOString();
  const file = await readDayFile(request, context, now);
  if (file instanceof Response) return file;
  const { plan } = await plannedDay(file, 'whole');
  return new Response(dayCalendar(file, plan, now), {
    headers: {
      'content-type': 'text/calendar; charset=utf-8',
      'content-disposition': 'attachment; filename="day-sheet.ics"',
      'cache-control': 'no-store',
    },
  });
}
