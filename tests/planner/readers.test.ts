import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readProblem } from '#lib/planner/read-problem';

const SM = `file with basedata            : none
jobs (incl. supersource/sink ):  3
RESOURCES
  - renewable                 :  1   R
  - nonrenewable              :  0   N
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          1           2
   2        1          1           3
   3        1          0
****
REQUESTS/DURATIONS:
jobnr. mode duration  R 1
-----
  1      1     0       0
  2      1     4       2
  3      1     0       0
****
RESOURCEAVAILABILITIES:
  R 1
   3
****`;
const SCH = '1\t1\t0\t0\n0 1 1 1 [0]\n1 1 2 2 0 [4] [-6]\n2 1 0\n0 1 0 0\n1 1 4 2\n2 1 0 0\n3\n';
const JSP = '# a remark\n1 2\n0 3 1 4\n';
const DZN = `n_tasks = 2; n_res = 1; d = [2, 3];
rr = array2d(1..1, 1..2, [1, 1]); rc = [1]; % so many
suc = [{2}, {}]; t_max = 9;
deadline = array2d(1..2, 1..3, [1, 2, 3, 4, 5, 6]);`;
const JSON_TEXT = `{"horizon": 9, "tasks": 2, "duration": [3, 0], "capacity": [1], "demand": [[1, 0]],
 "arcs": [[0, 1, 3]], "setupPairs": [[0, 1, 2, 2]]}`;

const GOOD: [string, string][] = [
  ['a.sm', SM],
  ['a.SCH', SCH],
  ['a.txt', JSP],
  ['a.dzn', DZN],
  ['a.json', JSON_TEXT],
];

function read(name: string, text: string) {
  const found = readProblem(name, text);
  if (!found.ok) throw new Error(found.problems[0]?.message);
  return found.value;
}

function messageOf(name: string, text: string): string | undefined {
  const found = readProblem(name, text);
  return found.ok ? undefined : found.problems[0]?.message;
}

describe('readers of problems', () => {
  test('a project with precedence', () => {
    const problem = read('a.sm', SM);
    expect(problem.horizon).toBe(4);
    expect(problem.tasks.map(({ minLength }) => minLength)).toEqual([0, 4, 0]);
    expect(problem.resources[0]).toMatchObject({
      capacity: [{ from: 0, units: 3 }],
      demands: [0, 2, 0],
    });
    expect(problem.lags.map(({ from, to, min }) => [from.task, to.task, min])).toEqual([
      [0, 1, 0],
      [1, 2, 4],
    ]);
  });

  test('a project with maximum lags', () => {
    const problem = read('a.SCH', SCH);
    expect(problem.lags.map(({ from, to, min }) => [from.task, to.task, min])).toEqual([
      [0, 1, 0],
      [1, 2, 4],
      [1, 0, -6],
    ]);
    expect(problem.resources[0]?.demands).toEqual([0, 2, 0]);
  });

  test('a job shop', () => {
    const problem = read('a.txt', JSP);
    expect(problem.tasks.map(({ name }) => name)).toEqual([
      'job 1 on machine 0',
      'job 1 on machine 1',
    ]);
    expect(problem.resources.map(({ demands }) => demands)).toEqual([
      [1, 0],
      [0, 1],
    ]);
    expect(problem.lags.map(({ min }) => min)).toEqual([3]);
  });

  test('weighted earliness and tardiness', () => {
    const [goal] = read('a.dzn', DZN).goals;
    expect(goal).toMatchObject({
      kind: 'deviations',
      of: [
        { event: { task: 0, anchor: 'start' }, due: 1, early: 2, late: 3 },
        { event: { task: 1, anchor: 'start' }, due: 4, early: 5, late: 6 },
      ],
    });
  });

  test('the compact form', () => {
    const problem = read('a.json', JSON_TEXT);
    expect(problem.setups).toMatchObject([{ first: 0, second: 1, between: 2, back: 2 }]);
    expect(problem.goals).toMatchObject([{ kind: 'latest', events: [{ task: 1 }] }]);
  });

  // [file, its text, the sentence]
  const BROKEN: [string, string, string][] = [
    ['a.sm', SM.replace('4       2', 'x       2'), 'Line 16: expected duration, a whole number'],
    ['a.sm', SM.replace('1           3', '1           9'), 'Line 9: expected successor'],
    ['a.sm', 'nothing', 'Line 1: expected "supersource/sink" further on, found "nothing"'],
    ['a.sch', SCH.replace('[4]', '[?]'), 'Line 3: expected lag in brackets'],
    ['a.sch', `${SCH}7`, 'Line 9: expected the end of the text, found "7"'],
    ['a.txt', '1 2\n0 3 2 4\n', 'Line 2: expected machine, a whole number from 0 to 1, found "2"'],
    ['a.txt', '1 2\n0 3', 'Line 2: expected machine, a whole number from 0 to 1, found the end'],
    ['a.dzn', DZN.replace('rc =', 'rc'), 'Line 2: expected "=", found "["'],
    ['a.dzn', DZN.replace('[2, 3]', '[2]'), 'expected 2 numbers in "d", not 1'],
    ['a.dzn', DZN.replace('t_max = 9;', ''), 'expected "t_max = …"'],
    ['a.json', '{"horizon":\n 9,,}', 'expected a JSON object'],
    ['a.json', JSON_TEXT.replace('[3, 0]', '[3]'), 'At "duration": expected 2 entries, found 1'],
    ['a.json', JSON_TEXT.replace('[0, 1, 3]', '[0, 7, 3]'), 'At "arcs.0": expected tasks from 0'],
    ['a.pdf', '', 'The ending of the file is not known: expected .sm, '],
    ['toString', '', 'The ending of the file is not known'],
  ];

  test.each(BROKEN)('%s that is broken (%#) is told with its place', (name, text, sentence) => {
    expect(messageOf(name, text)).toContain(sentence);
  });

  test('no text whatever makes a reader throw', () => {
    const mangled = fc
      .tuple(fc.constantFrom(...GOOD), fc.nat(400), fc.nat(30), fc.string({ maxLength: 12 }))
      .map(([[name, text], at, length, put]) => {
        const from = at % text.length;
        return [name, text.slice(0, from) + put + text.slice(from + length)] as const;
      });
    fc.assert(
      fc.property(mangled, ([name, text]) => {
        const found = readProblem(name, text);
        if (!found.ok) expect(found.problems[0]?.message).toMatch(/expected|At "/);
      }),
      { numRuns: 2000, seed: 3 },
    );
  });
});
