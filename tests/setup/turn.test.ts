import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type * as Turn from '../../prisma/setup/turn.cjs';

const { turnAt } = createRequire(import.meta.url)('../../prisma/setup/turn.cjs') as typeof Turn;

let folder = '';
let file = '';
const said: string[] = [];
const turn = (): ReturnType<typeof turnAt> => turnAt(file, (line) => said.push(line));
const held = (pid: number, child: number | null): void =>
  writeFileSync(file, JSON.stringify({ pid, child }));

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'turn-'));
  file = join(folder, 'turn.json');
  said.length = 0;
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The number of a process that has ended. */
async function deadPid(): Promise<number> {
  const child = spawn(process.execPath, ['-e', '']);
  await new Promise((resolve) => child.once('exit', resolve));
  return child.pid ?? 0;
}

describe('the turn to prepare the folder', () => {
  test('is one at a time: the second waits, says so once, and gets it when the first is done', async () => {
    const [first, second] = [turn(), turn()];
    await first.takeTurn();
    let got = false;
    const waiting = second.takeTurn().then(() => (got = true));
    await new Promise((resolve) => setTimeout(resolve, 800));
    expect(got).toBe(false);
    first.giveTurn();
    await waiting;
    expect(existsSync(file)).toBe(true);
    expect(said).toHaveLength(1);
    second.giveTurn();
    expect(existsSync(file)).toBe(false);
  });

  test('is taken over from a holder that was killed', async () => {
    held(await deadPid(), null);
    await turn().takeTurn();
    expect(said).toEqual([]);
  });

  test('is taken over from a holder that stopped beating, though its number lives on', async () => {
    held(process.pid, null);
    const before = new Date(Date.now() - 60_000);
    utimesSync(file, before, before);
    await turn().takeTurn();
    expect(said).toEqual([]);
  });

  test('waits for the program that a killed holder left running', async () => {
    const left = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 700)']);
    held(await deadPid(), left.pid ?? 0);
    await turn().takeTurn();
    expect(said).toHaveLength(1);
    expect(left.exitCode).toBe(0);
  });

  test('that was not taken is not given back', async () => {
    held(process.pid, null);
    turn().giveTurn();
    expect(existsSync(file)).toBe(true);
  });
});
