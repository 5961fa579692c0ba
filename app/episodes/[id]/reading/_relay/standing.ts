/** How a device stands to the others of a reading; 'refused' is reached, but not let in. */
export type RelayStanding = 'looking' | 'here' | 'away' | 'refused' | 'full';

/** What a device notices; 'told' of a message that was taken while the stream is open. */
export type RelayEvent = 'opened' | 'heard' | 'told' | 'lost' | 'refused' | 'full';

/**
 * The standing after what happened. One message that is lost says nothing of the next: whatever gets through again
 * lifts it. Only 'full' stays, since its stream was ended.
 * @example standingAfter('away', 'told') // 'here'
 */
export function standingAfter(now: RelayStanding, event: RelayEvent): RelayStanding {
  if (now === 'full') return now;
  return AFTER[event];
}

const AFTER: Readonly<Record<RelayEvent, RelayStanding>> = {
  opened: 'here',
  heard: 'here',
  told: 'here',
  lost: 'away',
  refused: 'refused',
  full: 'full',
};
