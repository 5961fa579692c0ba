import { ALPHABET, CODE_LENGTH, readCode } from '#lib/door/code-text';
import { sameSecret } from '#lib/door/secret';

export const CODE_MINUTES = 10;
export const TRIES = 5;

const LIFE_MS = CODE_MINUTES * 60_000;

/** A code that lets one device in. It is kept in memory alone. */
export interface PairingCode {
  readonly code: string;
  /** Milliseconds since 1970, as all times here. */
  readonly madeAtMs: number;
  readonly wrongTries: number;
  readonly used: boolean;
}

/** Why a code lets nobody in: there is none, its time is over, too many wrong tries, or it did already. */
export type Closed = 'none' | 'expired' | 'void' | 'used';

export type Answer =
  | { readonly kind: 'right' }
  | { readonly kind: 'wrong'; readonly left: number }
  | { readonly kind: 'closed'; readonly why: Closed };

/**
 * A new code. Every character of the alphabet is equally likely: bytes past the last whole multiple of the
 * alphabet's length are thrown away.
 * @param random gives so many random bytes
 * @param nowMs
 */
export function makePairingCode(random: (bytes: number) => Uint8Array, nowMs: number): PairingCode {
  const fair = 256 - (256 % ALPHABET.length);
  let code = '';
  while (code.length < CODE_LENGTH) {
    for (const byte of random(CODE_LENGTH)) {
      if (byte < fair && code.length < CODE_LENGTH) code += ALPHABET[byte % ALPHABET.length] ?? '';
    }
  }
  return { code, madeAtMs: nowMs, wrongTries: 0, used: false };
}

/** The moment from which a code is no longer good. */
export function expiresAtMs(code: PairingCode): number {
  return code.madeAtMs + LIFE_MS;
}

/** Whether a code still lets somebody in; else why not. A clock set back ends it too. */
export function standing(code: PairingCode | null, nowMs: number): 'open' | Closed {
  if (code === null) return 'none';
  if (code.used) return 'used';
  if (code.wrongTries >= TRIES) return 'void';
  return nowMs < code.madeAtMs || nowMs >= expiresAtMs(code) ? 'expired' : 'open';
}

/**
 * Tries what was typed against a code. Any text that is not the code is a wrong try; the fifth ends it. The
 * right one uses it up. Returns the code as it stands from now on.
 */
export function tryPairingCode(
  code: PairingCode | null,
  typed: string,
  nowMs: number,
): { readonly code: PairingCode | null; readonly answer: Answer } {
  const stands = standing(code, nowMs);
  if (code === null || stands !== 'open') {
    return { code, answer: { kind: 'closed', why: stands === 'open' ? 'none' : stands } };
  }
  if (sameSecret(readCode(typed), code.code)) {
    return { code: { ...code, used: true }, answer: { kind: 'right' } };
  }
  const wrongTries = code.wrongTries + 1;
  const next = { ...code, wrongTries };
  return wrongTries >= TRIES
    ? { code: next, answer: { kind: 'closed', why: 'void' } }
    : { code: next, answer: { kind: 'wrong', left: TRIES - wrongTries } };
}
