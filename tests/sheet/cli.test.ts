import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const demo = path.join(root, 'seed/demo.episode.json');

function sheet(...args: string[]) {
  const tsx = path.join(root, 'node_modules/tsx/dist/cli.mjs');
  const run = spawnSync(process.execPath, [tsx, 'lib/sheet/cli.ts', ...args], {
    cwd: root,
    encoding: 'utf8',
  });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

const folder = () => mkdtempSync(path.join(tmpdir(), 'slate sheet é-'));

describe('the sheet command', () => {
  it('writes every output, twice the same', () => {
    const [a, b] = [folder(), folder()];
    expect(sheet(demo, '--out', a)).toMatchObject({ code: 0, err: '' });
    expect(sheet(demo, '--out', b).code).toBe(0);
    const names = readdirSync(a).sort();
    expect(names).toHaveLength(15);
    for (const name of names) {
      expect(readFileSync(path.join(a, name))).toEqual(readFileSync(path.join(b, name)));
    }
  });

  it('tells every fault of a broken file by path, writes nothing and exits 1', () => {
    const out = folder();
    const file = path.join(out, 'broken.json');
    const data = JSON.parse(readFileSync(demo, 'utf8'));
    data.kitchen.burners = 'three';
    data.episode.segments[1].recipe.lines[0].foodId = 'nowhere';
    data.episode.title = '';
    writeFileSync(file, JSON.stringify(data));
    const { code, err } = sheet(file, '--out', path.join(out, 'made'));
    expect(code).toBe(1);
    expect(err).toContain('2 faults');
    expect(err).toContain('kitchen.burners:');
    expect(err).toContain('episode.title:');
    expect(readdirSync(out)).toEqual(['broken.json']);
  });

  it.each([
    [[], 'name one episode file'],
    [[demo], '--out'],
    [[demo, '--out', 'x', '--now', 'noon'], '"noon"'],
    [[demo, '--out', 'x', '--seed', 'luck'], '"luck"'],
    [[demo, '--colour', 'red'], '--colour'],
  ])('with the words %j exits 2 and says what is wrong', (args, words) => {
    const { code, err } = sheet(...args);
    expect(code).toBe(2);
    expect(err).toContain(words);
  });

  it('says where it cannot write', () => {
    const { code, err } = sheet(demo, '--out', demo);
    expect(code).toBe(1);
    expect(err).toContain(`cannot write into ${demo}`);
    expect(err).not.toContain('    at ');
  });

  it('says which file it cannot read', () => {
    expect(sheet('no-such-file.json', '--out', folder())).toMatchObject({ code: 1 });
  });
});
