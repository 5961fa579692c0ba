import ICAL from 'ical.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayCalendar } from '#lib/shoot/day-calendar';
import { calendarText, foldLine, refold } from '#lib/shoot/ical-fold';
import { planDay } from '#lib/shoot/plan-day';
import { dayFile, segment, step } from './made-day';
import { randomDay } from './random-day';

const STAMP = '2026-06-01T08:00:00Z';
const octets = (text: string): number => Buffer.byteLength(text, 'utf8');

describe('folding (RFC 5545, 3.1)', () => {
  it('160 ASCII octets make pieces of 75, 74 and 11', () => {
    const pieces = foldLine('x'.repeat(160)).split('\r\n');
    expect(pieces.map((piece) => piece.trimStart().length)).toEqual([75, 74, 11]);
    expect(pieces.map((piece) => piece.startsWith(' '))).toEqual([false, true, true]);
  });

  it('75 octets stay whole, 76 do not', () => {
    expect(foldLine('x'.repeat(75))).toBe('x'.repeat(75));
    expect(foldLine('x'.repeat(76))).toBe(`${'x'.repeat(75)}\r\n x`);
  });

  it('a 2-byte letter on octets 75 and 76 goes to the next line whole', () => {
    const [first, second] = foldLine(`${'x'.repeat(74)}étc`).split('\r\n');
    expect(octets(first ?? '')).toBe(74);
    expect(second).toBe(' étc');
  });

  it('any text: pieces hold at most 75 octets, and unfolding gives the line back', () => {
    const line = fc.string({ unit: 'grapheme', maxLength: 400 }).filter((s) => !/[\r\n]/.test(s));
    fc.assert(
      fc.property(line, (text) => {
        const folded = foldLine(text);
        for (const piece of folded.split('\r\n')) expect(octets(piece)).toBeLessThanOrEqual(75);
        expect(folded.replaceAll('\r\n ', '')).toBe(text);
      }),
    );
  });

  it('a file that was folded otherwise is unfolded first', () => {
    const line = `SUMMARY:${'y'.repeat(100)}`;
    const otherwise = `BEGIN:A\r\n${line.slice(0, 40)}\r\n ${line.slice(40)}\r\nEND:A`;
    expect(refold(otherwise)).toBe(`BEGIN:A\r\n${foldLine(line)}\r\nEND:A\r\n`);
  });

  it('control characters go, line breaks stay (3.3.11)', () => {
    expect(calendarText('a\u0000b\r\nc\rd\u0007')).toBe('ab\nc\nd');
  });
});

describe('the calendar file of a day', () => {
  const title = 'Mix, press; and \\ weigh';
  const long = `Zeigen: ${'über Größen '.repeat(12)}`.trim();
  const file = dayFile([
    segment('a', [
      step('one', { title, hands: true }),
      step('two', { title: long }),
      step('mark', { usualS: 0, title: 'Note the time' }),
    ]),
  ]);
  const plan = planDay(file, { seed: 1 });
  const text = dayCalendar(file, plan, STAMP);
  // Read back by ical.js, an implementation of RFC 5545 that shares nothing with the writer.
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  const events = calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
  const find = (summary: string) => {
    const event = events.find((candidate) => candidate.summary === summary);
    if (event === undefined) throw new Error(`No event "${summary}"`);
    return event;
  };

  it('ends every line by CRLF and holds at most 75 octets in each', () => {
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of text.split('\r\n')) expect(octets(line)).toBeLessThanOrEqual(75);
  });

  it('escapes text as 3.3.11 asks, and a reader gets it back', () => {
    expect(text).toContain('SUMMARY:Mix\\, press\\; and \\\\ weigh\r\n');
    expect(find(title).summary).toBe(title);
    expect(find(long).summary).toBe(long);
    // a,b;c\d and a line break → a\,b\;c\\d\n
    const vector = 'a,b;c\\d\n!';
    const named = dayFile([segment('a', [step('one', { title: vector })])]);
    const made = dayCalendar(named, planDay(named, { seed: 1 }), STAMP);
    expect(made).toContain('SUMMARY:a\\,b\\;c\\\\d\\n!\r\n');
  });

  it('has PRODID, VERSION 2.0, and UID, DTSTAMP and DTSTART in each event (3.6, 3.6.1 [from memory])', () => {
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toBe('-//Scale & Slate//Day sheet//EN');
    expect(events).toHaveLength(plan.entries.length);
    expect(new Set(events.map((event) => event.uid)).size).toBe(plan.entries.length);
    expect(text.match(/^DTSTAMP:20260601T080000Z\r$/gm)).toHaveLength(plan.entries.length);
    for (const event of events) expect(event.startDate.zone).toBe(ICAL.Timezone.utcTimezone);
  });

  it('stands in UTC by the wall clock of the kitchen: 09:00 in Copenhagen in June is 07:00Z', () => {
    expect(find(title).startDate.toString()).toBe('2026-06-06T07:00:00Z');
    expect(find(title).endDate.toString()).toBe('2026-06-06T07:10:00Z');
  });

  it('what takes no time has no end; what runs by itself leaves the person free', () => {
    expect(find('Note the time').component.hasProperty('dtend')).toBe(false);
    expect(find(title).component.getFirstPropertyValue('transp')).toBe('OPAQUE');
    expect(find(long).component.getFirstPropertyValue('transp')).toBe('TRANSPARENT');
  });

  it('says the same for the same day, and every entry of random days comes back at its time', () => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const random = randomDay(seed);
      const order = planDay(random, { seed: 1 });
      const made = dayCalendar(random, order, STAMP);
      expect(dayCalendar(structuredClone(random), order, STAMP)).toBe(made);
      const found = new ICAL.Component(ICAL.parse(made) as unknown[])
        .getAllSubcomponents('vevent')
        .map((event) => new ICAL.Event(event).startDate.toUnixTime());
      // 14 March 2026 in Copenhagen is UTC+1.
      const midnight = Date.UTC(2026, 2, 13, 23) / 1000;
      expect(found).toEqual(order.entries.map((entry) => midnight + entry.startMin * 60));
    }
  });
});
