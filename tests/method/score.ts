import { readFileSync } from 'node:fs';
import { readSentence } from '#lib/method/read-sentence';
import type { Hands, Place, SaidMinutes, Setting } from '#lib/method/method-step';

/** A step as the truth has it. */
export interface TrueStep {
  readonly minutes: SaidMinutes | null;
  readonly degrees: readonly Setting[];
  readonly equipment: Place;
  readonly hands: Hands;
  readonly inside: Setting | null;
}

export interface Sentence {
  readonly text: string;
  readonly steps: readonly TrueStep[];
}

/** Invented sentences with what they ask for, by the conventions that stand in the same file. */
export function sentences(name: 'written-with' | 'blind'): readonly Sentence[] {
  const url = new URL(`./sentences-${name}.json`, import.meta.url);
  return (JSON.parse(readFileSync(url, 'utf8')) as { sentences: Sentence[] }).sentences;
}

/** What the reader makes of a sentence, in the shape of the truth. */
export function readAlike(text: string): TrueStep[] {
  return readSentence(text).map(({ minutes, degrees, equipment, hands, inside }) => ({
    minutes,
    degrees,
    equipment,
    hands,
    inside,
  }));
}

/** What is compared: of each sentence a bag of values, so that one step too many spoils no other. */
const PARTS: Readonly<Record<string, (step: TrueStep) => readonly unknown[]>> = {
  minutes: ({ minutes }) => (minutes === null ? [] : [[minutes.low, minutes.high]]),
  degrees: ({ degrees }) => degrees.map(({ value, unit, fan }) => [value, unit, fan === true]),
  equipment: ({ equipment }) => [equipment],
  hands: ({ hands, equipment }) => [[hands, equipment === 'none']],
  inside: ({ inside }) => (inside === null ? [] : [[inside.value, inside.unit]]),
  step: (step) => [
    [
      ...['minutes', 'degrees', 'equipment', 'inside'].map((part) => PARTS[part]?.(step)),
      step.hands,
    ],
  ],
};

export interface Score {
  readonly part: string;
  /** Values of the truth, values that were read, and those in both. */
  readonly asked: number;
  readonly read: number;
  readonly both: number;
}

/** How many of the values that the sentences ask for are read, part by part; `step` is a whole step. */
export function scores(all: readonly Sentence[]): Score[] {
  return Object.entries(PARTS).map(([part, values]) => {
    let asked = 0;
    let read = 0;
    let both = 0;
    for (const { text, steps } of all) {
      const want = steps.flatMap(values).map((value) => JSON.stringify(value));
      const got = readAlike(text)
        .flatMap(values)
        .map((value) => JSON.stringify(value));
      asked += want.length;
      read += got.length;
      for (const value of got) {
        const at = want.indexOf(value);
        if (at < 0) continue;
        want.splice(at, 1);
        both += 1;
      }
    }
    return { part, asked, read, both };
  });
}
