import { readFileSync } from 'node:fs';
import type { EditFacts } from '#lib/claims/edit-facts';
import { dishesOf } from '#lib/episode/context';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';

const OPEN = ['', '-2', '-3', '-4'].map(
  (more) => new URL(`../claims/statements-open${more}.json`, import.meta.url),
);
const DEMO = new URL('../../seed/demo.episode.json', import.meta.url);

/** Words of a line of captions, and how many are said in an hour: 20,000 in two hours. */
const IN_LINE = 7;
const HOUR = 10_000;

/** The spoken words of the open sets, one after the other. */
function spokenWords(): string[] {
  const texts = OPEN.flatMap((url) => {
    const set = JSON.parse(readFileSync(url, 'utf8')) as {
      readonly texts: readonly { readonly form: string; readonly text: string }[];
    };
    return set.texts;
  });
  return texts
    .filter(({ form }) => form === 'captions')
    .flatMap(({ text }) => text.split(/\s+/))
    .filter((word) => word !== '');
}

/** So many words as captions have them, seven to a line; what is said again is said with other numbers. */
export function transcriptLines(words: number): string[] {
  const spoken = spokenWords();
  const lines: string[] = [];
  for (let at = 0; at < words; at += IN_LINE) {
    const line = Array.from({ length: Math.min(IN_LINE, words - at) }, (_, more) => {
      const index = at + more;
      const round = Math.floor(index / spoken.length);
      return moved(spoken[index % spoken.length] ?? '', round);
    });
    lines.push(line.join(' '));
  }
  return lines;
}

/** A whole number from 10 on, so much higher. */
const moved = (word: string, by: number) =>
  by === 0
    ? word
    : word.replace(/^[1-9]\d{1,3}(?![\d/:,.])/, (number) => String(Number(number) + by));

/** The demo's dishes with so many words said over them in SubRip, the dishes one after the other in the cut. */
export function spokenEpisode(words: number): EpisodeFile {
  const read = parseEpisodeFile(readFileSync(DEMO, 'utf8'));
  if (!read.ok) throw new Error('the demo does not read');
  const file = read.value;
  const { segments, rate } = file.episode;
  const hours = words / HOUR;
  const frames = (share: number) => Math.round((share * hours * 3600 * rate.num) / rate.den);
  const placed = segments.map((segment, index) => ({
    ...segment,
    inFrame: frames(index / segments.length),
    outFrame: null,
  }));
  const lines = transcriptLines(words);
  const text = lines
    .map((line, index) => {
      const [from, to] = [index, index + 1].map((at) => clock((at / lines.length) * hours));
      return `${index + 1}\n${from} --> ${to}\n${line}\n`;
    })
    .join('\n');
  return {
    ...file,
    episode: { ...file.episode, segments: placed },
    edit: {
      mends: [],
      named: [],
      texts: [{ id: 'spoken', kind: 'captions', name: 'spoken', text }],
    },
  };
}

function clock(hours: number): string {
  const ms = Math.round(hours * 3_600_000);
  const part = (of: number, by: number, digits: number) =>
    String(Math.floor(ms / of) % by).padStart(digits, '0');
  return `${part(3_600_000, 1000, 2)}:${part(60_000, 60, 2)}:${part(1000, 60, 2)},${part(1, 1000, 3)}`;
}

/** A log and prices, made up, so that times, readings and costs are held against something as well. */
export function madeFacts(file: EpisodeFile): EditFacts {
  const cost = { lowMinor: 900, minor: 1000, highMinor: 1100, currency: 'USD' };
  return {
    dayCost: { ...cost, minor: 3000, lowMinor: 2700, highMinor: 3300 },
    dishes: dishesOf(file.episode.segments).map(({ id, steps }) => ({
      segmentId: id,
      readyAfterS: 3600,
      steps: steps.map((step) => ({ stepId: step.id, tookS: step.usualS })),
      coreMilliC: [71_500],
      cost,
      inside: [],
    })),
  };
}
