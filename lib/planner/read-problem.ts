import type { ExactProblem } from '#lib/planner/exact/problem';
import { readCompact } from '#lib/planner/read-compact';
import { readDeviations } from '#lib/planner/read-deviations';
import { readJobShop } from '#lib/planner/read-job-shop';
import { readProgenMax } from '#lib/planner/read-progen-max';
import { readPsplib } from '#lib/planner/read-psplib';
import { failed, type Result } from '#lib/result';

const READERS: Readonly<Record<string, (text: string) => Result<ExactProblem>>> = {
  sm: readPsplib,
  sch: readProgenMax,
  txt: readJobShop,
  jsp: readJobShop,
  dzn: readDeviations,
  json: readCompact,
};

/**
 * Reads a problem in the format that the file's ending names. Never throws on any text.
 *
 * @example readProblem('ft06.txt', text)
 */
export function readProblem(name: string, text: string): Result<ExactProblem> {
  const ending = /\.([^./\\]+)$/.exec(name)?.[1]?.toLowerCase() ?? '';
  const read = Object.hasOwn(READERS, ending) ? READERS[ending] : undefined;
  if (read !== undefined) return read(text);
  const known = Object.keys(READERS).map((one) => `.${one}`);
  return failed({
    path: '',
    code: 'unknown-ending',
    message: `The ending of the file is not known: expected ${known.join(', ')}, found "${name}".`,
  });
}
