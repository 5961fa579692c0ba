import { dayCalendar } from '#lib/shoot/day-calendar';
import { planDay } from '#lib/shoot/plan-day';
import { readEpisodeFile } from '#lib/store/read-episode';
import { PLAN_SEED } from '../plan-seed';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The shooting order as a calendar file. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const now = new Date().toISOString();
  const file = await readEpisodeFile((await params).id, now);
  if (!file?.day) return new Response('There is no filming day here.\n', { status: 404 });
  return new Response(dayCalendar(file, planDay(file, { seed: PLAN_SEED }), now), {
    headers: {
      'content-type': 'text/calendar; charset=utf-8',
      'content-disposition': 'attachment; filename="day-sheet.ics"',
      'cache-control': 'no-store',
    },
  });
}
