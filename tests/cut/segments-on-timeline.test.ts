import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EditPiece } from '#lib/cut/edit-list';
import { findSegments, type SoughtSegment } from '#lib/cut/find-segments';
import { plannedRuntime } from '#lib/cut/planned-runtime';
import { readSpoken, type SpokenLine } from '#lib/cut/spoken';
import { segmentsInList } from '#lib/cut/segments-in-list';
import { demoFile } from '#seed/demo/demo-file';
import { loadSr28 } from '#seed/load-sr28';

const demo = demoFile(loadSr28());
const sought: SoughtSegment[] = demo.episode.segments.map(({ id, title, talkingPoints }) => ({
  id,
  title,
  points: talkingPoints.map(({ text }) => text),
}));

function rehearsal(): readonly SpokenLine[] {
  const text = demo.edit?.texts.find(({ kind }) => kind === 'captions')?.text ?? '';
  const spoken = readSpoken(text);
  if (!spoken.ok) throw new Error('the demo’s captions cannot be read');
  return spoken.value.lines;
}

describe('where segments begin in captions', () => {
  it('is found by titles and talking points, within some seconds of the cut', () => {
    const found = findSegments(sought, rehearsal());
    expect(found.map(({ id }) => id)).toEqual(demo.episode.segments.map(({ id }) => id));
    for (const { id, startMs } of found) {
      const segment = demo.episode.segments.find((each) => each.id === id);
      expect(Math.abs(startMs - (segment?.inFrame ?? 0) * 40), id).toBeLessThan(5000);
    }
  });

  it('is left out where none of its words are said', () => {
    const more = [...sought, { id: 'none', title: 'Walnut brittle', points: [] }];
    expect(findSegments(more, rehearsal()).map(({ id }) => id)).not.toContain('none');
  });

  it('is nothing in a text without times', () => {
    const untimed = rehearsal().map((line) => ({ ...line, startMs: null, endMs: null }));
    expect(findSegments(sought, untimed)).toEqual([]);
  });

  it('rises in running order and stands where a line begins, whatever is said', () => {
    const words = fc.constantFrom(
      'skyr',
      'pots',
      'barley',
      'skillet',
      'turkey',
      'tray',
      'and',
      'harbor',
    );
    const lines = fc.array(fc.array(words, { minLength: 1, maxLength: 6 }), { maxLength: 40 });
    fc.assert(
      fc.property(lines, (said) => {
        const spoken = said.map((text, index) => ({
          startMs: index * 3000,
          endMs: index * 3000 + 2900,
          text: text.join(' '),
          line: index + 1,
        }));
        const found = findSegments(sought, spoken);
        const order = sought.map(({ id }) => id);
        for (const [index, { id, startMs, words: own }] of found.entries()) {
          const before = found[index - 1];
          expect(startMs).toBeGreaterThan(before?.startMs ?? -1);
          expect(order.indexOf(id)).toBeGreaterThan(before ? order.indexOf(before.id) : -1);
          expect(spoken.some((line) => line.startMs === startMs)).toBe(true);
          expect(own.length).toBeGreaterThan(0);
        }
      }),
    );
  });
});

const piece = (name: string, fromFrame: number, toFrame: number): EditPiece => ({
  name,
  fromFrame,
  toFrame,
  sourceFrom: null,
  speed: 1,
  transition: 'cut',
  at: fromFrame,
});

describe('segments in an edit list', () => {
  const segments = [
    { id: 'a', title: 'Barley skillet', points: [] },
    { id: 'b', title: 'Skyr pots', points: [] },
  ];

  it('stand from the first clip with their name to the last, with what is cut in between', () => {
    const pieces = [
      piece('barley wide take 2', 0, 50),
      piece('B0041', 50, 80),
      piece('Barley skillet close', 80, 200),
      piece('skyr pots, take 1', 200, 300),
      piece('logo', 300, 320),
    ];
    const { segments: found, unknown } = segmentsInList(segments, pieces);
    expect(found).toEqual([
      {
        id: 'a',
        inFrame: 0,
        outFrame: 200,
        clips: ['barley wide take 2', 'B0041', 'Barley skillet close'],
      },
      { id: 'b', inFrame: 200, outFrame: 300, clips: ['skyr pots, take 1'] },
    ]);
    expect(unknown.map(({ name }) => name)).toEqual(['logo']);
  });

  it('take no clip that fits two titles alike', () => {
    const twins = [
      { id: 'a', title: 'Lemon tart', points: [] },
      { id: 'b', title: 'Lemon curd', points: [] },
    ];
    expect(segmentsInList(twins, [piece('lemon', 0, 50)]).segments).toEqual([]);
  });
});

describe('planned runtime', () => {
  const segment = { id: 's', title: 'Talk', plannedS: 90, inFrame: 0, outFrame: 1800 };

  it('is words at a rate, and shots: 300 words at 150 a minute are 120 s', () => {
    // National Center for Voice and Speech: about 150 words a minute in US English narration.
    const points = [Array.from({ length: 300 }, () => 'word').join(' ')];
    const shots = [{ lengthS: 5 }, { lengthS: 7 }];
    const { segments } = plannedRuntime([{ ...segment, points, shots }], { num: 25, den: 1 });
    expect(segments[0]).toMatchObject({
      words: 300,
      talkS: 120,
      shotsS: 12,
      reckonedS: 132,
      cutS: 72,
    });
  });

  it('knows no cut where none was made', () => {
    const uncut = { ...segment, inFrame: null, outFrame: null, points: [], shots: [] };
    expect(plannedRuntime([uncut], { num: 25, den: 1 }).cutS).toBeNull();
  });

  it('takes the cut’s length at its exact rate', () => {
    // 1800 frames at 30000/1001 are 60.06 s (SMPTE ST 12-1, drop-frame table).
    const { cutS } = plannedRuntime([{ ...segment, points: [], shots: [] }], {
      num: 30000,
      den: 1001,
    });
    expect(cutS).toBeCloseTo(60.06, 9);
  });
});
