import 'server-only';
import { placeOf } from '#lib/store/next-place';

/**
 * What stays the same of each text where a newer one takes its place, so that its form stays and still says what became
 * of it.
 */
export async function textSlots(ids: readonly string[]): Promise<readonly string[]> {
  const places = await Promise.all(ids.map((id) => placeOf('EditText', id)));
  // Two that were brought in at the same moment may have one place.
  return ids.map((id, at) =>
    places[at] == null || places.indexOf(places[at]) !== at ? id : `place ${places[at]}`,
  );
}
