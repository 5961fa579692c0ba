/**
 * The sequence 1, 1, 2, 1, 1, 2, 4, … by which runs are cut off (Luby, Sinclair, Zuckerman, Information
 * Processing Letters 47, 1993): within a constant of the best universal strategy.
 *
 * @param index from 1
 * @example luby(7) === 4
 */
export function luby(index: number): number {
  let length = 1;
  while (length < index + 1) length *= 2;
  if (length === index + 1) return length / 2;
  return luby(index - length / 2 + 1);
}
