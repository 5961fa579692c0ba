import { describe, expect, test, vi } from 'vitest';
import { z } from 'zod';
import { failed, ok } from '#lib/result';
import {
  amount,
  grams,
  optionalDate,
  optionalText,
  requiredText,
  revision,
  runtime,
  ticked,
} from '../../app/_forms/fields';
import { fieldOfColumn, parseThenAct } from '../../app/_forms/parse-then-act';
import { UNTOUCHED } from '../../app/_ui/form/form-state';

const form = (texts: Readonly<Record<string, string>>) => {
  const data = new FormData();
  for (const [name, text] of Object.entries(texts)) data.set(name, text);
  return data;
};
const schema = z.object({ title: requiredText('the title', 10), rev: revision });

describe('parse, then act', () => {
  test('what cannot be read is not acted on, and all that was typed comes back', async () => {
    const act = vi.fn();
    const state = await parseThenAct(
      schema,
      UNTOUCHED,
      form({ title: ' ', rev: '3', other: 'kept', $ACTION_ID: 'x' }),
      act,
    );
    expect(act).not.toHaveBeenCalled();
    expect(state.problems).toMatchObject([{ path: 'title', message: 'Say the title.' }]);
    expect(state.typed).toEqual({ title: ' ', rev: '3', other: 'kept' });
    expect(state).toMatchObject({ round: 0, attempt: 1 });
  });

  test('what can be read is acted on once, and the fields begin anew', async () => {
    const act = vi.fn(() => Promise.resolve(ok('Saved.')));
    const state = await parseThenAct(schema, UNTOUCHED, form({ title: 'A', rev: '3' }), act);
    expect(act.mock.calls).toEqual([[{ title: 'A', rev: 3 }]]);
    expect(state).toEqual({
      problems: [],
      typed: {},
      done: 'Saved.',
      rev: null,
      round: 1,
      attempt: 1,
    });
  });

  test('a fault of the act lands on its field', async () => {
    const problem = { path: 'edits[0].patch.title', code: 'not-yours', message: 'Changed.' };
    const state = await parseThenAct(schema, UNTOUCHED, form({ title: 'A', rev: '3' }), () =>
      Promise.resolve(failed(problem)),
    );
    expect(state.problems).toEqual([{ ...problem, path: 'title' }]);
    expect(state.typed.title).toBe('A');
    expect(state.done).toBe('');
  });

  test.each([
    ['edits[0].row.title', 'title'],
    ['edits[12].patch.plannedMg', 'plannedMg'],
    ['edits[0]', ''],
    ['edits', ''],
    ['title', 'title'],
  ])('%s is the field %j', (path, field) => {
    expect(fieldOfColumn(path)).toBe(field);
  });
});

describe('fields', () => {
  const value = <S extends z.ZodType>(field: S, text?: string) => {
    const parsed = field.safeParse(text);
    return parsed.success ? parsed.data : 'refused';
  };

  test('left empty are null, never 0', () => {
    for (const field of [amount, grams, runtime, optionalDate]) {
      expect(value(field, '')).toBeNull();
      expect(value(field, undefined)).toBeNull();
    }
  });

  test('say what would be right where they cannot be read', () => {
    expect(amount.safeParse('some').error?.issues[0]?.message).toContain('1 1/2');
    expect(grams.safeParse('some').error?.issues[0]?.message).toContain('20 ± 7');
    expect(value(runtime, '3:75')).toBe('refused');
    expect(value(optionalDate, '2026-02-30')).toBe('refused');
    expect(value(optionalDate, '2026-12-17')).toBe('2026-12-17');
  });

  test('read what was typed', () => {
    expect(value(amount, ' 1/2 ')).toEqual({ low: { num: 1, den: 2 }, high: { num: 1, den: 2 } });
    expect(value(grams, '20')).toEqual({ lowMg: 20_000, valueMg: 20_000, highMg: 20_000 });
    expect(value(ticked, 'on')).toBe(true);
    expect(value(ticked)).toBe(false);
    expect(value(optionalText(5), 'longer')).toBe('refused');
    expect(value(revision, '-1')).toBe('refused');
  });

  test('a change from elsewhere is told once with what stands there, and the next try is meant', async () => {
    const facts = { stored: 'theirs', storedRev: 7 };
    const conflict = { code: 'conflict', message: 'Changed.', facts };
    const state = await parseThenAct(schema, UNTOUCHED, form({ title: 'mine', rev: '3' }), () =>
      Promise.resolve(
        failed(
          { ...conflict, path: 'edits[0].patch.title' },
          { ...conflict, path: 'edits[1].patch.title' },
        ),
      ),
    );
    expect(state.problems).toHaveLength(1);
    expect(state.problems[0]?.message).toContain('“theirs”');
    expect(state.rev).toBe(7);
    expect(state.typed.title).toBe('mine');
  });
});
