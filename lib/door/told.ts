import { TRIES, type Answer } from '#lib/door/pairing-code';

/** What came of a try to be let in, as it stands in an address: a word that is known, and the tries left. */
export interface Told {
  readonly told: string;
  readonly left: string;
}

const WORDS: Readonly<Record<string, string>> = {
  none: 'There is no code now. Make one on the computer, at Phones.',
  used: 'This code let a device in already. Make a new one on the computer, at Phones.',
  expired: 'This code’s ten minutes are over. Make a new one on the computer, at Phones.',
  void: 'Too many wrong tries: this code is no longer good. Make a new one on the computer, at Phones.',
  name: 'Say what this device is called, in at most 80 characters.',
};

/** An answer as it goes into an address; null where the device is let in. */
export function toldOf(answer: Answer): Told | null {
  if (answer.kind === 'right') return null;
  if (answer.kind === 'closed') return { told: answer.why, left: '' };
  return { told: 'wrong', left: String(answer.left) };
}

/**
 * The sentence for it, by known words alone: an address that somebody else made cannot put words of its own
 * onto the page. `toldWords({ told: 'wrong', left: '4' })` → `'This is not the code. 4 tries are left.'`.
 */
export function toldWords({ told, left }: Told): string | null {
  if (told !== 'wrong') return Object.hasOwn(WORDS, told) ? (WORDS[told] ?? null) : null;
  const tries = Number(left);
  if (!Number.isInteger(tries) || tries < 1 || tries >= TRIES) return null;
  const rest = tries === 1 ? 'One try is left.' : `${tries} tries are left.`;
  return `This is not the code. ${rest}`;
}
