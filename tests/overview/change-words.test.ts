import { describe, expect, test } from 'vitest';
import { SUBJECTS } from '#lib/overview/change-subjects';
import { actWords, fieldChanges, type ChangeLine } from '#lib/overview/change-words';
import { columnsOf, ENTITY_NAMES } from '#lib/store/rows';

const telling = {
  names: { r: 'Barley skillet', s: 'Barley skillet', f1: 'Barley, pearled', f2: 'Barley, hulled' },
  region: 'EU',
  zone: 'UTC',
} as const;

const line = {
  id: 'l',
  recipeId: 'r',
  position: 0,
  deletedAt: null,
  text: '200 g pearl barley',
  lowNum: 200,
  lowDen: 1,
  highNum: 200,
  highDen: 1,
  unit: 'g',
  foodId: 'f1',
  note: '',
  leftKind: 'none',
  leftMg: null,
};
const changed = (after: object, before: object = line): ChangeLine => ({
  entity: 'RecipeLine',
  entityId: 'l',
  before: { ...before },
  after: { ...before, ...after },
});
const words = (...lines: ChangeLine[]) => actWords(lines, telling);

describe('every table that can be written', () => {
  test.each(ENTITY_NAMES)('%s: each column is a field of the screen, or never read', (entity) => {
    const subject = SUBJECTS[entity];
    const told = subject?.fields.flatMap(({ columns }) => columns) ?? [];
    const place = subject?.placed ? ['position'] : [];
    const all = [...told, ...(subject?.silent ?? []), ...place].sort();
    expect(all).toEqual([...columnsOf(entity)].sort());
  });

  test.each(ENTITY_NAMES)(
    '%s: a change of any told column is said, with no column’s name',
    (entity) => {
      const subject = SUBJECTS[entity];
      for (const { columns } of subject?.fields ?? []) {
        for (const column of columns) {
          // Whatever the column holds: the journal is read as it is.
          for (const [was, is] of [
            ['was so', 'is so'],
            [60, 120],
            [false, true],
          ]) {
            const whole = Object.fromEntries(columns.map((name) => [name, was]));
            const row = { id: 'x', deletedAt: null, ...whole };
            const update = { entity, entityId: 'x', before: row, after: { ...row, [column]: is } };
            const said = actWords([update], telling).join(' ');
            expect(fieldChanges(update, telling), `${entity}.${column}`).toHaveLength(1);
            for (const name of columnsOf(entity).filter((each) => /[A-Z]/.test(each))) {
              expect(said, `${entity}.${column}`).not.toMatch(new RegExp(`\\b${name}\\b`));
            }
          }
        }
      }
    },
  );

  // A draft is no coming: it has words of its own.
  const coming = ENTITY_NAMES.filter((entity) => entity !== 'Draft');
  test.each(coming)('%s: coming and going is said, unless it is never seen', (entity) => {
    const row = { id: 'x', deletedAt: null };
    const gone = { id: 'x', deletedAt: '2026-05-02T08:00:00.000Z' };
    const said = (before: object | null, after: object) =>
      actWords(
        [{ entity, entityId: 'x', before: before && { ...before }, after: { ...after } }],
        telling,
      ).join(' ');
    if (SUBJECTS[entity]?.kind === null) {
      expect(said(null, row)).toBe('');
    } else {
      expect(said(null, row)).toContain('added');
      expect(said(row, gone)).toContain('taken out');
      expect(said(gone, row)).toContain('brought back');
    }
  });
});

describe('in words', () => {
  test('says where, from which words to which', () => {
    expect(words(changed({ text: '220 g pearl barley' }))).toEqual([
      'Barley skillet: 200 g pearl barley → 220 g pearl barley',
    ]);
  });

  test('says each field as the form calls it, with its unit and what was none', () => {
    const after = { leftKind: 'mass', leftLowMg: 2000, leftMg: 3000, leftHighMg: 4000 };
    expect(words(changed({ ...after, note: 'to taste', foodId: 'f2' }))).toEqual([
      'Barley skillet, 200 g pearl barley: counted as Barley, pearled → Barley, hulled; left behind none → 3 ± 1 g; note none → to taste',
    ]);
    expect(words(changed({ leftKind: 'weighed' }))).toEqual([
      'Barley skillet, 200 g pearl barley: left behind none → weighed',
    ]);
    expect(words(changed({ highNum: 220 }))).toEqual([
      'Barley skillet, 200 g pearl barley: amount 200 g → 200–220 g',
    ]);
  });

  test('an added list is told by its first names and a number', () => {
    const made = (text: string): ChangeLine => ({
      entity: 'RecipeLine',
      entityId: text,
      before: null,
      after: { ...line, id: text, text },
    });
    expect(words(...['a', 'b', 'c', 'd', 'e', 'f'].map(made))).toEqual([
      'Barley skillet: 6 ingredients added: a, b, c, d and 2 more',
    ]);
    expect(words(made('salt'))).toEqual(['Barley skillet: ingredient added: salt']);
  });

  test('what is remembered beside an act is told only where nothing else was done', () => {
    const row = { id: 'm', wordsFolded: 'pearl barley', foodId: 'f1', deletedAt: null };
    const remembered = { entity: 'LineMatch', entityId: 'm', before: null, after: row };
    const more = changed({ note: 'rinsed' });
    expect(words(remembered, more)).toEqual(words(more));
    expect(words(remembered)).toHaveLength(1);
  });

  test('a dish taken out is told with what went with it', () => {
    const gone = (entity: string, row: object): ChangeLine => ({
      entity,
      entityId: 'x',
      before: { ...row, deletedAt: null },
      after: { ...row, deletedAt: '2026-05-02T08:00:00.000Z' },
    });
    expect(
      words(
        gone('RecipeLine', line),
        gone('Recipe', { title: 'Barley skillet' }),
        gone('Segment', { title: 'Barley skillet', kind: 'recipe' }),
        gone('Step', { title: 'Boil' }),
        gone('Step', { title: 'Rest' }),
      ),
    ).toEqual(['Dish taken out: Barley skillet, with 1 ingredient, 2 steps']);
  });

  test('an exchange of places is told as the order before and after', () => {
    const at = (text: string, from: number, to: number) =>
      changed({ position: to }, { ...line, text, position: from });
    expect(words(at('barley', 0, 1), at('salt', 1, 0))).toEqual([
      'Barley skillet: order of ingredients: barley, salt → salt, barley',
    ]);
  });

  test('a text that was refused is told as it was typed', () => {
    const sent = { episodeId: 'e-1', lineId: 'l', rev: '4', foodId: 'f1', 'line-l-foods': 'f1' };
    const texts = { ...sent, text: '230 g barley', note: '', quantity: '230' };
    const payload = JSON.stringify({ texts });
    const draft = { entity: 'Draft', entityId: 'd', before: null, after: { payload } };
    const row = { payload, entityId: 'r', deletedAt: null };
    expect(words({ ...draft, after: row })).toEqual([
      'Barley skillet: typed and not saved: 230 g barley, 230',
    ]);
    // That it was put away once it was used says nothing.
    const away = { ...row, deletedAt: '2026-05-02T08:00:00.000Z' };
    expect(words({ ...draft, before: row, after: away })).toEqual([]);
  });

  test('a long text is cut, and line breaks make no lines', () => {
    const [said] = words(changed({ note: `a\n${'b'.repeat(500)}` }));
    expect(said).not.toContain('\n');
    expect(said?.length).toBeLessThan(300);
  });
});

test('a dish and its recipe that get another title are renamed once', () => {
  const update = (entity: 'Segment' | 'Recipe', more: object = {}): ChangeLine => {
    const before = { id: entity, deletedAt: null, title: 'Bean pot', ...more };
    return { entity, entityId: entity, before, after: { ...before, title: 'Bean stew' } };
  };
  const dish = update('Segment', { kind: 'recipe' });
  expect(words(dish, update('Recipe'))).toEqual(['Dish renamed: Bean pot → Bean stew']);
  expect(words(update('Segment', { kind: 'talk' }))).toEqual([
    'Talk renamed: Bean pot → Bean stew',
  ]);
  expect(words(update('Recipe'))).toEqual(['Title changed: Bean pot → Bean stew']);
});
