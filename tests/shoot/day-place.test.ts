import { describe, expect, it } from 'vitest';
import { anotherDay, inOrderOfDay, placeColumns, placeInWords } from '#lib/shoot/day-place';
import { dayFile, segment, step } from './made-day';

const place = (segmentId: string) => {
  return { segmentId, title: segmentId, part: 'all' as const, pickup: false };
};

describe('a further filming day', () => {
  const file = dayFile([segment('a', [step('s')]), segment('b', [step('t')])], [], {
    outfit: 'blue apron',
    startMin: 600,
  });

  it('is the day after the last, or today if that is later, with what is on none yet', () => {
    const days = [
      { date: '2026-02-27', places: [] },
      { date: '2026-02-28', places: [place('a')] },
    ];
    const next = anotherDay(file, days, '2026-02-20');
    expect(next).toMatchObject({ date: '2026-03-01', segmentIds: ['b'], startMin: 600 });
    expect(next.outfit).toBe('blue apron');
    expect(anotherDay(file, days, '2026-04-01').date).toBe('2026-04-01');
  });

  it('is an episode’s first where it has none', () => {
    const first = anotherDay({ ...file, day: null }, [], '2026-04-01');
    expect(first).toMatchObject({ date: '2026-04-01', segmentIds: ['a', 'b'], startMin: 540 });
  });
});

describe('a segment on a day', () => {
  it('is said with what of it is done', () => {
    const said = (['all', 'cook', 'film', 'pickup'] as const).map((way) =>
      placeInWords({ title: 'Oat tray', ...placeColumns(way) }),
    );
    expect(said).toEqual([
      'Oat tray',
      'cooking of Oat tray',
      'shots of Oat tray',
      'pickup of Oat tray',
    ]);
  });

  it('comes after those before it in its own running order, whatever else is filmed', () => {
    expect(inOrderOfDay(['a1', 'b1'], ['a1', 'a2'], ['a2'])).toEqual(['a1', 'a2', 'b1']);
    expect(inOrderOfDay(['b1', 'a2'], ['a1', 'a2'], ['a1'])).toEqual(['b1', 'a1', 'a2']);
    expect(inOrderOfDay(['b1'], ['a1', 'a2'], ['a2', 'a1'])).toEqual(['b1', 'a1', 'a2']);
    expect(inOrderOfDay([], ['a1'], ['a1'])).toEqual(['a1']);
  });
});
