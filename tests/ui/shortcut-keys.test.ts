import { describe, expect, test } from 'vitest';
import { episodeIdIn, isTyping, nextKey, shortcutsFor } from '../../app/_ui/shortcuts/keys';

const season = shortcutsFor('/');
const inEpisode = shortcutsFor('/episodes/e1/day');

describe('keys', () => {
  test('one after the other lead to a place', () => {
    const first = nextKey(season, [], 'g');
    expect(first).toEqual({ pending: ['g'], shortcut: null });
    expect(nextKey(season, first.pending, 'p').shortcut?.does).toEqual({
      kind: 'go',
      href: '/pantry',
    });
  });

  test('that continue nothing begin anew', () => {
    expect(nextKey(season, ['g'], '?').shortcut?.does.kind).toBe('help');
    expect(nextKey(season, ['g'], 'x')).toEqual({ pending: [], shortcut: null });
  });

  test('of an episode lead to its own pages and mean nothing elsewhere', () => {
    expect(nextKey(inEpisode, [], 'p').shortcut?.does).toEqual({
      kind: 'go',
      href: '/episodes/e1/publish',
    });
    expect(nextKey(season, [], 'p').shortcut).toBeNull();
  });

  test('of the edit go through its statements; Enter is told and left to the browser', () => {
    const edit = shortcutsFor('/episodes/e1/edit');
    const does = (key: string) => nextKey(edit, [], key).shortcut?.does;
    expect(does('j')).toEqual({ kind: 'page', does: 'next' });
    expect(does('k')).toEqual({ kind: 'page', does: 'before' });
    expect(does('o')).toEqual({ kind: 'page', does: 'off' });
    expect(does('u')).toEqual({ kind: 'page', does: 'unknown' });
    expect(edit.map(({ keys }) => keys.join(' '))).toContain('Enter');
    expect(does('Enter')).toBeUndefined();
    expect(nextKey(inEpisode, [], 'j').shortcut).toBeNull();
  });

  test('of “Read to camera” are told there, and left to it', () => {
    const reading = shortcutsFor('/episodes/e1/reading');
    expect(reading.map(({ keys }) => keys.join(' '))).toContain('PageDown');
    expect(nextKey(reading, [], 'PageDown').shortcut).toBeNull();
    expect(inEpisode.map(({ keys }) => keys.join(' '))).not.toContain('PageDown');
  });

  test('are told apart: none is the beginning of another', () => {
    const all = shortcutsFor('/episodes/e1/edit');
    for (const a of all) {
      for (const b of all) {
        if (a !== b) expect(b.keys.slice(0, a.keys.length)).not.toEqual(a.keys);
      }
    }
  });
});

// WCAG 2.2 SC 2.1.4 (character key shortcuts): silent where text is typed.
test.each([
  ['INPUT', false, true],
  ['TEXTAREA', false, true],
  ['SELECT', false, true],
  ['DIV', true, true],
  ['BUTTON', false, false],
])('in %s (editable: %s) keys are text: %s', (tagName, isContentEditable, typing) => {
  expect(isTyping({ tagName, isContentEditable })).toBe(typing);
  expect(isTyping(null)).toBe(false);
});

test('the episode is read from the path', () => {
  expect(episodeIdIn('/episodes/e1/day')).toBe('e1');
  expect(episodeIdIn('/pantry')).toBeNull();
});
