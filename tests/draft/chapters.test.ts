import { describe, expect, test } from 'vitest';
import { readDraft } from '#lib/draft/read-draft';
import { sketch } from './sketch';

// Common practice of descriptions, no source; all invented.
const sketched = (description: string, captions = '') => {
  const read = readDraft({ description, captions });
  return read.ok ? sketch(read.value) : [JSON.stringify(read.problems)];
};
const said = '[0:00] hello there\n[0:12] this is the harbour\n[2:00] and that is it';

describe('a chapter', () => {
  test.each(['Morning', 'Day two', 'Which soup is cheaper', 'My new knife', 'On the ferry'])(
    'without the words or lines of a dish is talk: %s',
    (title) => {
      const description = `0:00 Hello\n0:10 ${title}\n1:00 Leek soup\n\nLEEK SOUP\n2 leeks`;
      for (const captions of ['', said])
        expect(sketched(description, captions)[1]).toBe(`0:10 talk ${title}`);
    },
  );

  test('with one amount said in passing is talk, and the amount is told', () => {
    const captions = `${said}\n[2:02] I used 300 grams of cherries for the tart`;
    expect(
      sketched('0:00 Leek soup\n1:58 The long way home\n\nLEEK SOUP\n2 leeks', captions),
    ).toEqual([
      '0:00 dish Leek soup',
      '  2 leeks',
      '1:58 talk The long way home',
      'left captions 4 amount',
    ]);
  });

  test.each(['Courgette fritters', 'Second breakfast', 'Bowl 2', 'Snack'])(
    'with a dish’s words is a dish: %s',
    (title) => {
      const description = `0:00 Hello\n0:10 ${title}\n1:00 Leek soup\n\nLEEK SOUP\n2 leeks`;
      expect(sketched(description, said)[1]).toBe(`0:10 dish ${title}`);
    },
  );

  test('with lines that are said is a dish, whatever it is called', () => {
    const captions = '[0:12] I used 200 grams of peas\n[0:20] and 60 grams of feta\n[1:02] soup';
    expect(
      sketched('0:00 Hello\n0:10 The green one\n1:00 Leek soup\n\nLEEK SOUP\n2 leeks', captions),
    ).toEqual([
      '0:00 talk Hello',
      '0:10 dish The green one',
      '  200 grams of peas',
      '  60 grams of feta',
      '1:00 dish Leek soup',
      '  2 leeks',
    ]);
    // Nothing could say what is in it: it stays a dish.
    expect(sketched('0:00 Hello\n0:10 Kabsa\n3:00 Bye')[1]).toBe('0:10 dish Kabsa');
  });

  test('is a stage of the dish whose ingredients it is called after', () => {
    const lists = '\n\nWRAPS (makes 6)\n1 can beans\n300 g tofu\n6 eggs\n\nRED DIP\n1 pepper';
    expect(
      sketched(`0:00 Hi\n0:10 Tofu and beans\n1:00 Eggs\n1:30 Rolling\n2:00 Red dip${lists}`),
    ).toEqual([
      '0:00 talk Hi',
      '0:10 dish WRAPS ×6',
      '  1 can beans',
      '  300 g tofu',
      '  6 eggs',
      '2:00 dish Red dip',
      '  1 pepper',
    ]);
  });

  test('keeps the portions beside its name out of the name', () => {
    expect(sketched('0:00 Hello\n0:10 Leek soup (serves 3)\n4:00 Plum tart (1 big one)')).toEqual([
      '0:00 talk Hello',
      '0:10 dish Leek soup ×3',
      '4:00 dish Plum tart ×1',
    ]);
  });
});
