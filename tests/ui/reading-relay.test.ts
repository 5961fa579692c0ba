import { describe, expect, test } from 'vitest';
import { relayMessage, type RelayMessage } from '../../app/episodes/[id]/reading/_relay/message';
import { Relay } from '../../app/episodes/[id]/reading/_relay/relay';
import { standingAfter, type RelayEvent } from '../../app/episodes/[id]/reading/_relay/standing';

const next: RelayMessage = { kind: 'move', move: 'next' };
const place: RelayMessage = { kind: 'place', item: 3, share: 0.5, going: true, perMinute: 150 };

const listening = (relay: Relay, episodeId: string) => {
  const heard: RelayMessage[] = [];
  return { heard, leave: relay.listen(episodeId, (message) => heard.push(message)) };
};

describe('what devices of a reading tell each other', () => {
  test('reaches all devices of the episode and no other', () => {
    const relay = new Relay();
    const [screen, phone, other] = ['a', 'a', 'b'].map((id) => listening(relay, id));
    relay.tell('a', next);
    expect(screen?.heard).toEqual([next]);
    expect(phone?.heard).toEqual([next]);
    expect(other?.heard).toEqual([]);
  });

  test('tells one that comes later where the reading is, and forgets it with the last device', () => {
    const relay = new Relay();
    const screen = listening(relay, 'a');
    relay.tell('a', place);
    relay.tell('a', next);
    const phone = listening(relay, 'a');
    expect(phone.heard).toEqual([place]);
    screen.leave?.();
    phone.leave?.();
    expect(listening(relay, 'a').heard).toEqual([]);
  });

  test('takes no message to nobody, and no more devices than it can serve', () => {
    const relay = new Relay();
    relay.tell('nobody', place);
    expect(listening(relay, 'nobody').heard).toEqual([]);
    const leaves = Array.from({ length: 40 }, () => relay.listen('a', () => undefined));
    const served = leaves.filter((leave) => leave !== null);
    expect(served.length).toBe(12);
    served[0]?.();
    expect(relay.listen('a', () => undefined)).not.toBeNull();
    const rooms = Array.from({ length: 80 }, (_, at) => relay.listen(`e${at}`, () => undefined));
    expect(rooms.filter((leave) => leave === null).length).toBeGreaterThan(20);
  });

  test.each([
    [{ kind: 'move', move: 'jump' }],
    [{ kind: 'rate', perMinute: 9000 }],
    [{ kind: 'place', item: -1, share: 0, going: true, perMinute: 150 }],
    [{ kind: 'place', item: 1, share: 2, going: true, perMinute: 150 }],
    [{ kind: 'else' }],
    [null],
  ])('takes nothing that is no message: %j', (sent) => {
    expect(relayMessage.safeParse(sent).success).toBe(false);
  });
});

describe('how a device stands to the others', () => {
  const after = (...events: readonly RelayEvent[]) => events.reduce(standingAfter, 'looking');

  test.each<[RelayEvent]>([['told'], ['heard'], ['opened']])(
    'a message that was lost is forgotten with the next that gets through: %s',
    (through) => {
      expect(after('opened', 'lost')).toBe('away');
      expect(after('opened', 'lost', through)).toBe('here');
    },
  );

  test('a refusal is no being away, and lifted as well', () => {
    expect(after('opened', 'refused')).toBe('refused');
    expect(after('opened', 'refused', 'told')).toBe('here');
  });

  test('where too many are connected nothing more is heard', () => {
    expect(after('full', 'told')).toBe('full');
    expect(after('full', 'lost')).toBe('full');
  });
});
