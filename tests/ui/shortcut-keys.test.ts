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

  test('are told apart: none is the beginning of another', () => {
    for (const a of inEpisode) {
      for (const b of inEpisode) {
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
