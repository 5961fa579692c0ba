import { expect, test } from 'vitest';
import { listed, type ToldAct } from '../../app/episodes/[id]/changes/told';

const act = (groupId: string, undoable: boolean, ...words: string[]): ToldAct => ({
  groupId,
  label: '',
  when: '',
  words,
  undoable,
});

test('what says nothing is not listed, and what was kept of one refusal is listed once', () => {
  const acts = [
    act('1', true, 'Barley: a → b'),
    act('2', false, 'Barley: typed and not saved: c, 200'),
    act('3', false, 'Barley: typed and not saved: c'),
    act('4', false),
    act('5', true, 'Barley: a → b'),
    act('6', true, 'Barley: a → b'),
  ];
  expect(listed(acts).map(({ groupId }) => groupId)).toEqual(['1', '2', '5', '6']);
});
