import { GONE_DAY } from '#lib/store/day-events';
import { keepDisplayPhoto, readDisplayPhoto } from '#lib/store/photos-of-days';
import { isDayOf } from '#lib/store/read-day-events';
import { faults } from '../../../../../../_sync/answers';
import { photoAnswer, takePhoto } from '../../../../../../_sync/photo-answers';

interface Context {
  readonly params: Promise<{ readonly id: string; readonly sha256: string }>;
}

/** The day that the address asks about, if it is one of the episode's; null if not. */
async function dayOf(request: Request, id: string): Promise<string | null> {
  const day = new URL(request.url).searchParams.get('day') ?? '';
  return (await isDayOf(id, day)) ? day : null;
}

/** Takes the bytes of a photo that an entry of the day names by this hash. */
export async function PUT(request: Request, { params }: Context): Promise<Response> {
  const { id, sha256 } = await params;
  const day = await dayOf(request, id);
  if (day === null) return faults(404, [{ path: 'day', code: 'gone', message: GONE_DAY }]);
  return takePhoto(request, sha256, (bytes) => keepDisplayPhoto(day, sha256, bytes));
}

/** A photo of a scale's display. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id, sha256 } = await params;
  const day = await dayOf(request, id);
  return photoAnswer(day === null ? null : await readDisplayPhoto(day, sha256));
}
