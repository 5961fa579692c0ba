import 'server-only';
import { randomBytes } from 'node:crypto';
import {
  makePairingCode,
  standing,
  tryPairingCode,
  type Answer,
  type Closed,
  type PairingCode,
} from '#lib/door/pairing-code';

/** The one code of this process; a restart forgets it, and it is written nowhere. */
const held = globalThis as typeof globalThis & { slatePairingCode?: PairingCode | null };

/** The code, and whether it still lets somebody in. */
export function heldCode(at: Date): {
  readonly code: PairingCode | null;
  readonly stands: 'open' | Closed;
} {
  const code = held.slatePairingCode ?? null;
  return { code, stands: standing(code, at.getTime()) };
}

/** Makes a new code; the one before is no longer good. */
export function newCode(at: Date): void {
  held.slatePairingCode = makePairingCode((bytes) => randomBytes(bytes), at.getTime());
}

/** Tries a code as typed. Nothing is waited for in between, so that two at once cannot both be the one. */
export function tryCode(typed: string, at: Date): Answer {
  const { code, answer } = tryPairingCode(held.slatePairingCode ?? null, typed, at.getTime());
  held.slatePairingCode = code;
  return answer;
}
