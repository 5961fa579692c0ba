import type { z } from 'zod';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { referenceProblems } from '#lib/episode/references';
import {
  episodeFileSchema,
  FILE_FORMAT,
  FILE_VERSION,
  type EpisodeFile,
} from '#lib/episode/schema';
import { stableJson } from '#lib/episode/stable-json';

/**
 * Reads an episode file. Every fault is told, each with its path and a sentence.
 * @param text the file's text, as read
 * @example parseEpisodeFile('{') // failed: path '', code 'not-json'
 */
export function parseEpisodeFile(text: string): Result<EpisodeFile> {
  let data: unknown;
  try {
    data = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return failed({ path: '', code: 'not-json', message: `this is not a JSON file: ${reason}` });
  }
  return parseEpisodeData(data);
}

/** Reads an episode from data that was parsed already, with the same checks. */
export function parseEpisodeData(data: unknown): Result<EpisodeFile> {
  const header = headerProblem(data);
  if (header) return failed(header);
  const parsed = episodeFileSchema.safeParse(data);
  if (!parsed.success) {
    const problems = parsed.error.issues.map((issue) => ({
      path: pathText(issue.path),
      code: issue.code ?? 'invalid',
      message: faultWords(issue),
    }));
    return { ok: false, problems };
  }
  const problems = referenceProblems(parsed.data);
  return problems.length > 0 ? { ok: false, problems } : ok(parsed.data);
}

const KIND_WORDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'an object',
  array: 'a list',
  null: 'null',
  undefined: 'nothing',
};

/** A fault in plain words: what was expected and what stands there. */
function faultWords(issue: z.core.$ZodIssue): string {
  if (issue.code !== 'invalid_type') return issue.message;
  const found = / received (\w+)$/.exec(issue.message)?.[1] ?? '';
  const word = (kind: string) => KIND_WORDS[kind] ?? kind;
  return found === 'undefined'
    ? `is missing: it takes ${word(issue.expected)}`
    : `takes ${word(issue.expected)}, not ${word(found)}`;
}

/** The text of an episode file: keys in order, two spaces, a line feed at the end. */
export function episodeFileText(file: EpisodeFile): string {
  return stableJson(file);
}

function headerProblem(data: unknown): Problem | null {
  if (data === null || typeof data !== 'object' || Array.isArray(data)) {
    return { path: '', code: 'not-an-episode', message: 'an episode file holds one JSON object' };
  }
  const { format, version } = data as Record<string, unknown>;
  if (format !== FILE_FORMAT) {
    return {
      path: 'format',
      code: 'not-an-episode',
      message: `"format" must be "${FILE_FORMAT}"; this file says ${JSON.stringify(format) ?? 'nothing'}`,
    };
  }
  if (version !== FILE_VERSION) {
    return {
      path: 'version',
      code: 'version',
      message: `this program reads version ${FILE_VERSION}; the file is version ${JSON.stringify(version) ?? 'unknown'}`,
    };
  }
  return null;
}

/** `['episode', 'segments', 2, 'title']` → `episode.segments[2].title`. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    return text === '' ? String(key) : `${text}.${String(key)}`;
  }, '');
}
