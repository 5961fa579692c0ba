import { dayCalendar } from '#lib/shoot/day-calendar';
import { readEpisodeFile } from '#lib/store/read-episode';
import { dayOfRequest } from '../asked-day';
import { plannedDay } from '#lib/work/day-searches';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The shooting order as a calendar file. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const now = new Date().toISOString();
  const file = await readEpisodeFile((await params).id, now, { dayId: dayOfRequest(request) });
  if (!file?.day) return new Response('There is no filming day here.\n', { status: 404 });
  const { plan } = await plannedDay(file, 'whole');
  return new Response(dayCalendar(file, plan, now), {
    headers: {
      'content-type': 'text/calendar; charset=utf-8',
      'content-disposition': 'attachment; filename="day-sheet.ics"',
      'cache-control': 'no-store',
    },
  });
}
