import type { RelayMessage } from './message';

type Tell = (message: RelayMessage) => void;

/** Devices of one episode, and episodes, that are served at a time: far more than one person has. */
const MOST_DEVICES = 12;
const MOST_EPISODES = 50;

interface Room {
  readonly devices: Set<Tell>;
  /** Where the reading was last, for a device that comes later. */
  place: RelayMessage | null;
}

/**
 * Passes messages between the devices of a reading. In memory, by episode, and nothing is kept once the last device has
 * left: a message is of use for a second.
 */
export class Relay {
  private readonly rooms = new Map<string, Room>();

  /** Hears the messages of an episode until the returned function is called; null where there are too many already. */
  listen(episodeId: string, tell: Tell): (() => void) | null {
    const room = this.rooms.get(episodeId) ?? { devices: new Set<Tell>(), place: null };
    if (room.devices.size >= MOST_DEVICES) return null;
    if (!this.rooms.has(episodeId)) {
      if (this.rooms.size >= MOST_EPISODES) return null;
      this.rooms.set(episodeId, room);
    }
    room.devices.add(tell);
    if (room.place) tell(room.place);
    return () => {
      room.devices.delete(tell);
      if (room.devices.size === 0 && this.rooms.get(episodeId) === room)
        this.rooms.delete(episodeId);
    };
  }

  /** Tells all devices of an episode, the sender among them. */
  tell(episodeId: string, message: RelayMessage): void {
    const room = this.rooms.get(episodeId);
    if (!room) return;
    if (message.kind === 'place') room.place = message;
    for (const tell of room.devices) tell(message);
  }
}

/** The one of this process. */
export const relay = new Relay();
