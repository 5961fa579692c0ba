import type { StatementPlace } from '#lib/claims/judged';

/** Whether words are said aloud: round numbers are then coarser than they are written (MODEL D.1). */
export function isSpoken(kind: StatementPlace['kind']): boolean {
  return kind === 'captions' || kind === 'talkingPoint';
}
