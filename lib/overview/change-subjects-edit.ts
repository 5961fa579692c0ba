import { chosen, field, plain, type JournalRow, type Telling } from '#lib/overview/change-fields';
import type { Subject } from '#lib/overview/change-subjects';

/** What a text of the edit is, in the words of the screen. */
const TEXT_WORDS: Readonly<Record<string, string>> = {
  captions: 'captions or transcript',
  description: 'description',
  title: 'title',
  thumbnail: 'thumbnail',
  card: 'card',
};

const SCOPE_WORDS: Readonly<Record<string, string>> = {
  whole: 'all of it',
  portion: 'a portion',
  half: 'half of it',
  per100g: '100 g of it',
  day: 'the whole day',
  soFar: 'the day so far',
};

/** How words are read now: "“two eggs” as “ten eggs”", "“600 calories” of Oat bowl, one of 2". */
function mendWords(row: JournalRow, telling: Telling): string {
  const words = `“${plain(row.words)}”`;
  if (row.kind === 'nothing') return `${words} as no number`;
  if (row.kind === 'heard') return `${words} as “${plain(row.heard)}”`;
  return `${words} of ${aboutWords(row, telling)}`;
}

function aboutWords({ segmentId, portionId, scope }: JournalRow, { names }: Telling): string {
  const how = SCOPE_WORDS[plain(scope)] ?? '';
  if (typeof segmentId !== 'string') return how;
  const of = names[segmentId] ?? 'a dish no longer listed';
  if (typeof portionId !== 'string') return `${of}, ${how}`;
  return `${of}, ${names[portionId] ?? 'a portion no longer listed'}`;
}

/** The tables of an episode's edit, in the words of the screen. */
export const EDIT_SUBJECTS = {
  EditText: {
    kind: ['text of the edit', 'texts of the edit'],
    name: (row) => {
      const kind = TEXT_WORDS[plain(row.kind)] ?? '';
      return `${kind} “${plain(row.name) || plain(row.text)}”`;
    },
    placed: true,
    fields: [chosen('kind', 'kind', TEXT_WORDS), field('name', 'name'), field('words', 'text')],
    silent: ['id', 'episodeId'],
  },
  ReadingMend: {
    kind: ['reading put right', 'readings put right'],
    name: mendWords,
    fields: [
      field('words', 'words'),
      field('after', 'before'),
      field('before', 'after'),
      {
        words: 'read',
        columns: ['kind', 'heard', 'segmentId', 'portionId', 'scope'],
        say: mendWords,
      },
    ],
    silent: ['id', 'episodeId', 'textId'],
  },
  NamedFood: {
    kind: ['answer to a named food', 'answers to named foods'],
    name: (row) => plain(row.food),
    fields: [
      field('food', 'food'),
      chosen('answer', 'answer', { leftOff: 'left off, not eaten', none: 'none in it' }),
    ],
    silent: ['id', 'episodeId'],
  },
} as const satisfies Readonly<Record<string, Subject>>;
