import { describe, expect, test } from 'vitest';
import { isIn, sessionEnd } from '#lib/door/session';
import { sha256Hex } from '#lib/door/secret';
import { database } from '#lib/store/client';
import { isLetIn, letIn, readPairedDevices, sendAway } from '#lib/store/paired-devices';
import { readChanges } from '#lib/store/read-changes';
import { undo } from '#lib/store/undo';
import { withFreshDatabase } from '../store/database';

const AT = new Date('2026-11-25T12:00:00Z');
const later = (ms: number) => new Date(AT.getTime() + ms);
const BY = { actor: 'test', at: later(5000) };

async function paired(name: string) {
  const token = await letIn(name, AT);
  if (!token.ok) throw new Error('must be let in');
  const device = (await readPairedDevices(AT)).find((each) => each.name === name);
  if (!device) throw new Error('must be listed');
  return { token: token.value, device };
}

/** Takes back the last act on a device. */
async function undoLast(entityId: string) {
  const [last] = await readChanges({ entityId, take: 1 });
  return undo(last?.groupId ?? '', BY);
}

withFreshDatabase();

describe('a device', () => {
  test('is in by its secret, of which only the hash is kept', async () => {
    const { token, device } = await paired('Kitchen phone');
    expect(await isLetIn(token, later(1000))).toBe(true);
    expect(device.isIn).toBe(true);
    const row = await database().pairedDevice.findUniqueOrThrow({ where: { id: device.id } });
    expect(row.tokenHash).toBe(sha256Hex(token));
    const journal = await readChanges({ entityId: device.id });
    expect(journal.map(({ label }) => label)).toEqual(['Let in: Kitchen phone']);
    expect(JSON.stringify([row, journal])).not.toContain(token);
  });

  test('is not in by another secret, by its hash, or by none', async () => {
    const { token } = await paired('Other phone');
    for (const wrong of ['', sha256Hex(token), `${token}x`, 'A'.repeat(43), '%', "' OR 1=1"]) {
      expect(await isLetIn(wrong, later(1000))).toBe(false);
    }
  });

  test('has a secret of its own each time', async () => {
    const tokens = await Promise.all([1, 2, 3].map((n) => letIn(`Phone ${n}`, AT)));
    expect(new Set(tokens.map((each) => (each.ok ? each.value : ''))).size).toBe(3);
  });

  test('is out once it is sent away, and no undo lets it in again', async () => {
    const { token, device } = await paired('Old phone');
    expect((await sendAway(device, later(2000))).ok).toBe(true);
    expect(await isLetIn(token, later(3000))).toBe(false);
    expect((await undoLast(device.id)).ok).toBe(true);
    const row = await database().pairedDevice.findUniqueOrThrow({ where: { id: device.id } });
    expect(row.endedAt).toBeNull();
    expect(await isLetIn(token, later(6000))).toBe(false);
    const listed = (await readPairedDevices(later(6000))).find(({ id }) => id === device.id);
    expect(listed?.isIn).toBe(false);
  });

  test('is out once its letting in is undone, and undoing that lets it in no more', async () => {
    const { token, device } = await paired('Guest phone');
    expect((await undoLast(device.id)).ok).toBe(true);
    expect(await isLetIn(token, later(6000))).toBe(false);
    expect((await undoLast(device.id)).ok).toBe(true);
    const row = await database().pairedDevice.findUniqueOrThrow({ where: { id: device.id } });
    expect(row.deletedAt).toBeNull();
    expect(await isLetIn(token, later(7000))).toBe(false);
  });

  test('sent away twice at once is told so, and stays away', async () => {
    const { device } = await paired('Twice');
    expect((await sendAway(device, later(1))).ok).toBe(true);
    const again = await sendAway(device, later(2));
    expect(again.ok ? [] : again.problems.map(({ code }) => code)).toEqual(['conflict']);
  });
});

describe('a session', () => {
  const row = { rev: 1, pairedAt: AT, endedAt: null, deletedAt: null };
  const end = sessionEnd(AT);
  test('lasts 90 days to the millisecond', () => {
    expect(end.toISOString()).toBe('2027-02-23T12:00:00.000Z');
    expect(isIn(row, new Date(end.getTime() - 1))).toBe(true);
    expect(isIn(row, end)).toBe(false);
  });
  test('does not begin before it begins', () => {
    expect(isIn(row, later(0))).toBe(true);
    expect(isIn(row, later(-1))).toBe(false);
  });
  test.each([{ rev: 2 }, { endedAt: AT }, { deletedAt: AT }])('%o ends it', (change) => {
    expect(isIn({ ...row, ...change }, later(1))).toBe(false);
  });
});
