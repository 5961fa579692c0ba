import { describe, expect, it } from 'vitest';
import { stageOf, type StageFacts } from '#lib/overview/stage';

const facts: StageFacts = {
  dishes: 2,
  lines: 9,
  openLines: 0,
  segments: 4,
  timedSegments: 0,
  filmingDate: null,
  copied: false,
  publishOn: null,
};

describe('the stage of an episode', () => {
  it.each([
    [{ dishes: 0, lines: 0 }, 'sketch'],
    [{ lines: 0 }, 'sketch'],
    [{ openLines: 1 }, 'numbersOpen'],
    [{}, 'numbersReady'],
    [{ filmingDate: '2026-12-12' }, 'filmingSet'],
    [{ filmingDate: '2026-12-10' }, 'filmingSet'],
    [{ filmingDate: '2026-12-09' }, 'inTheEdit'],
    [{ timedSegments: 4 }, 'inTheEdit'],
    [{ timedSegments: 4, filmingDate: '2026-12-12' }, 'filmingSet'],
    [{ timedSegments: 3 }, 'numbersReady'],
    [{ copied: true, publishOn: '2026-12-10', openLines: 3 }, 'published'],
    [{ copied: true, publishOn: '2026-12-11' }, 'numbersReady'],
    [{ copied: true }, 'numbersReady'],
    [{ publishOn: '2026-12-01' }, 'numbersReady'],
  ] as const)('with %j is %s', (more, stage) => {
    expect(stageOf({ ...facts, ...more }, '2026-12-10')).toBe(stage);
  });
});
