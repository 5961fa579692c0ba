import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldList, mergeLists, standingOf } from '#lib/shopping/fold-list';
import { listEventSchema } from '#lib/shopping/list-event-schema';
import {
  episodeScope,
  nextAt,
  readScope,
  spanScope,
  type ListEvent,
} from '#lib/shopping/list-events';
import { lotsOf, toPutAway } from '#lib/shopping/put-away';

const scope = episodeScope('e');
const at = (minute: number) => new Date(Date.UTC(2026, 4, 1, 10, minute)).toISOString();

/** Entries of three devices, whose clocks often show the same minute. */
const event = (index: number) =>
  fc
    .record({
      device: fc.constantFrom('phone', 'laptop', 'other'),
      minute: fc.integer({ min: 0, max: 3 }),
      food: fc.constantFrom('cheese', 'milk'),
      kind: fc.constantFrom('ticked', 'unticked', 'instead', 'paid', 'photographed', 'putAway'),
      of: fc.integer({ min: 0, max: 7 }),
    })
    .map(({ device, minute, food, kind, of }): ListEvent => {
      const made = {
        ...{ id: `e${index}`, scope, deviceId: device, deviceSeq: index + 1, at: at(minute) },
        foodId: food,
      };
      const packs = [{ packId: 'p', count: 1, mg: 100_000 }];
      switch (kind) {
        case 'ticked':
          return { ...made, kind, payload: { packs } };
        case 'instead': {
          const more = { takenFoodId: 'other', label: null, photoSha256: null };
          return { ...made, kind, payload: { name: 'x', packs, ...more } };
        }
        case 'paid': {
          const payload = { shopId: null, minor: of, currency: 'USD', on: '2026-05-01' };
          return { ...made, kind, payload };
        }
        case 'photographed':
          return { ...made, kind, payload: { photoSha256: String(of).repeat(64) } };
        case 'putAway':
          return { ...made, kind, payload: { eventId: `e${of}` } };
        case 'unticked':
          return { ...made, kind, payload: {} };
      }
    });
const log = fc.tuple(...Array.from({ length: 8 }, (_, index) => event(index)));

describe('entries of a shopping list', () => {
  it('merge whatever their order, their grouping and how often they arrive', () => {
    fc.assert(
      fc.property(
        log,
        fc.integer({ min: 0, max: 8 }),
        fc.integer({ min: 0, max: 8 }),
        (all, i, j) => {
          const [low, high] = [Math.min(i, j), Math.max(i, j)];
          const [a, b, c] = [all.slice(0, low), all.slice(low, high), all.slice(high)].map(
            foldList,
          );
          if (!a || !b || !c) throw new Error('three parts');
          expect(mergeLists(a, b)).toEqual(mergeLists(b, a));
          expect(mergeLists(mergeLists(a, b), c)).toEqual(mergeLists(a, mergeLists(b, c)));
          expect(mergeLists(a, a)).toEqual(a);
          expect(foldList([...all].reverse())).toEqual(foldList(all));
          expect(foldList([...all, ...all])).toEqual(foldList(all));
          expect(mergeLists(mergeLists(c, b), a)).toEqual(foldList(all));
        },
      ),
    );
  });

  it('lose no tick of two devices that could not hear each other', () => {
    const tick = (device: string, food: string): ListEvent => ({
      ...{ id: `${device}-1`, scope, deviceId: device, deviceSeq: 1, at: at(0) },
      ...{ kind: 'ticked', foodId: food, payload: { packs: [] } },
    });
    const phone = foldList([tick('phone', 'cheese')]);
    const laptop = foldList([tick('laptop', 'milk')]);
    const both = mergeLists(phone, laptop);
    expect(['cheese', 'milk', 'eggs'].map((food) => standingOf(both, food))).toEqual([
      'inBasket',
      'inBasket',
      'open',
    ]);
  });

  it('counts what is pressed after seeing an entry as later, with a slow clock too', () => {
    const [slow, seen] = [at(0), at(30)];
    expect(nextAt(slow, [seen])).toBe(new Date(Date.parse(seen) + 1).toISOString());
    expect(nextAt(seen, [slow])).toBe(seen);
  });

  it('names a list of an episode or a span of dates, and nothing else', () => {
    expect(readScope(episodeScope('a-1'))).toEqual({ episodeId: 'a-1' });
    expect(readScope(spanScope('2026-05-01', '2026-05-07'))).toEqual({
      from: '2026-05-01',
      to: '2026-05-07',
    });
    for (const wrong of ['', 'episode:', 'span:2026-05-07..2026-05-01', 'episode:a b', 'x:y']) {
      expect(readScope(wrong)).toBeNull();
    }
  });

  it('are read strictly: a negative price and a pack of nothing are refused in words', () => {
    const made = { id: 'a', scope, deviceId: 'd', deviceSeq: 1, at: at(0), foodId: 'cheese' };
    const paid = { shopId: null, minor: -1, currency: 'USD', on: '2026-05-01' };
    const price = listEventSchema.safeParse({ ...made, kind: 'paid', payload: paid });
    expect(price.error?.issues[0]?.message).toBe('A price is not less than nothing');
    const packs = [{ packId: null, count: 1, mg: 0 }];
    const empty = listEventSchema.safeParse({ ...made, kind: 'ticked', payload: { packs } });
    expect(empty.error?.issues[0]?.message).toBe('A pack holds more than nothing');
  });
});

describe('putting away', () => {
  const ticked: ListEvent = {
    ...{ id: 't', scope, deviceId: 'd', deviceSeq: 1, at: at(0), kind: 'ticked', foodId: 'cheese' },
    payload: {
      packs: [
        { packId: 'a', count: 2, mg: 400_000 },
        { packId: 'b', count: 1, mg: 125_000 },
      ],
    },
  };

  it('makes lots whose ids follow from the entry, with what the packs hold', () => {
    expect(lotsOf(ticked)).toEqual([
      { lotId: 'l0-t', moveId: 'b0-t', foodId: 'cheese', mg: 400_000 },
      { lotId: 'l1-t', moveId: 'b1-t', foodId: 'cheese', mg: 125_000 },
    ]);
    const open = { ...ticked, payload: { packs: [{ packId: null, count: 1, mg: null }] } };
    expect(lotsOf(open)).toBe('amount-open');
  });

  it('is done once: what was put away is not to be put away again', () => {
    const before = foldList([ticked]);
    expect(toPutAway(before)).toEqual([ticked]);
    const done: ListEvent = {
      ...{ ...ticked, id: 'p', deviceSeq: 2, at: at(1) },
      ...{ kind: 'putAway', payload: { eventId: 't' } },
    };
    const after = foldList([done, ticked]);
    expect(toPutAway(after)).toEqual([]);
    expect(standingOf(after, 'cheese')).toBe('putAway');
  });
});
