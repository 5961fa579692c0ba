import { describe, expect, test } from 'vitest';
import {
  alignOf,
  movesWhatIsSeen,
  withKept,
} from '../../app/episodes/[id]/edit/_components/rows-places';

describe('the rows of a long list', () => {
  const range = { startIndex: 10, endIndex: 12, overscan: 1, count: 20 };

  test('are those around what is seen, and the one that stays drawn, in their order', () => {
    expect(withKept(range, -1)).toEqual([9, 10, 11, 12, 13]);
    expect(withKept(range, 2)).toEqual([2, 9, 10, 11, 12, 13]);
    expect(withKept(range, 19)).toEqual([9, 10, 11, 12, 13, 19]);
    expect(withKept(range, 11)).toEqual([9, 10, 11, 12, 13]);
    expect(withKept(range, 20)).toEqual([9, 10, 11, 12, 13]);
  });

  test('are brought to where they are asked for, and to their beginning where they are taller than the room', () => {
    const rows = { measurementsCache: [{ size: 600 }, { size: 641 }], scrollRect: { height: 640 } };
    expect([0, 1, 2].map((index) => alignOf(rows, index, 'center'))).toEqual([
      'center',
      'start',
      'center',
    ]);
    expect(alignOf(rows, 0, 'auto', 96)).toBe('start');
    expect(alignOf({ ...rows, scrollRect: null }, 1, 'auto')).toBe('auto');
  });

  test('move what is seen only from before it, and only while the list is seen', () => {
    expect(movesWhatIsSeen(100, 200, 300)).toBe(true);
    expect(movesWhatIsSeen(200, 200, 300)).toBe(false);
    expect(movesWhatIsSeen(100, 300, 300)).toBe(false);
  });
});
