import { headers } from 'next/headers';
import { DOOR_HEADER } from '#lib/door/session';
import { isFromDoor } from '#lib/store/open-door';

/** Whether this request came through the phone's door, and not from the computer itself. */
export async function cameByDoor(): Promise<boolean> {
  return isFromDoor((await headers()).get(DOOR_HEADER));
}
