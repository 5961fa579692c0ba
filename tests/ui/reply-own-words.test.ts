import { describe, expect, test } from 'vitest';
import {
  begunWith,
  replyField,
  typedOver,
} from '../../app/episodes/[id]/publish/replies/own-words';

// Common practice, no source: what a person wrote is replaced by nobody but the person.
describe('the field of a reply', () => {
  test('follows the draft while nothing was written', () => {
    const own = begunWith('', 'first', false);
    expect(replyField(own, 'first')).toEqual({ words: 'first', offered: null });
    expect(replyField(own, 'second')).toEqual({ words: 'second', offered: null });
  });

  test('keeps what was typed when another draft is asked for, and offers that beside it', () => {
    const own = typedOver(begunWith('', 'first', false), 'first, in my words', 'first');
    expect(replyField(own, 'first')).toEqual({ words: 'first, in my words', offered: null });
    expect(replyField(own, 'second')).toEqual({ words: 'first, in my words', offered: 'second' });
    const more = typedOver(own, 'still mine', 'second');
    expect(replyField(more, 'second')).toEqual({ words: 'still mine', offered: 'second' });
  });

  test('keeps a saved reply; a draft that was asked for stands beside it, one that was not does not', () => {
    expect(replyField(begunWith('saved', 'draft', false), 'draft').offered).toBeNull();
    expect(replyField(begunWith('saved', 'draft', true), 'draft')).toEqual({
      words: 'saved',
      offered: 'draft',
    });
    expect(replyField(begunWith('saved', 'saved', true), 'saved').offered).toBeNull();
  });
});
