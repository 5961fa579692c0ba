import type { EpisodeFile, Segment } from '#lib/episode/schema';
import { drawLengths, simulate } from '#lib/planner/simulate/simulate';
import { dayFacts } from '#lib/shoot/day-facts';
import { daylightAt } from '#lib/shoot/daylight';
import { likelyDay, USUAL_RUNS } from '#lib/shoot/likely';
import { dayGraph, spreadsOf } from '#lib/shoot/likely-graph';
import { solveByRules } from '#lib/shoot/solve-day';
import { demoFile } from '../ui/page-support';
import { ms, timed } from './timing';

/** Each is timed this often and the least is kept: what other programs take is not the simulation's. */
const REPEATS = 5;

/**
 * Times how likely a day is, for the demo's day and for days of that day twice and three times over (about 120
 * tasks), beside its runs alone without critical chains and changes.
 */
export async function run(): Promise<void> {
  const rows: Record<string, Record<string, string | number>> = {};
  for (const times of [1, 2, 3]) {
    const file = longDay(demoFile(), times);
    const facts = dayFacts(file);
    const solved = solveByRules(facts, 1);
    const { graph, promises } = dayGraph(facts, solved, daylightAt(file.kitchen, facts.day.date));
    const whole: number[] = [];
    const alone: number[] = [];
    let changes = 0;
    for (let repeat = 0; repeat < REPEATS; repeat += 1) {
      const answer = await timed(() => likelyDay(file, solved, { seed: 1 }));
      changes = answer.value?.changes.length ?? Number.NaN;
      whole.push(answer.ms);
      const drawing = { runs: USUAL_RUNS, seed: 1, spreads: spreadsOf(facts) };
      const runs = await timed(() => simulate(graph, drawLengths(graph, drawing), promises));
      alone.push(runs.ms);
    }
    rows[`demo × ${times}`] = {
      tasks: graph.ids.length,
      promises: promises.length,
      'changes that help': changes,
      'whole answer, ms': ms(Math.min(...whole)),
      'runs alone, ms': ms(Math.min(...alone)),
    };
  }
  console.info(`${USUAL_RUNS} runs, least of ${REPEATS}; NaN: the plan by rules breaks a rule`);
  console.table(rows);
}

/** A day of the same segments so many times over, packed, without a latest wrap and times of the clock. */
function longDay(file: EpisodeFile, times: number): EpisodeFile {
  const { day, episode } = file;
  if (day === null) throw new Error('the demo has no day');
  const copies = Array.from({ length: times }, (_, index) => (id: string) => `${id}-${index}`);
  const copied = (segment: Segment, name: (id: string) => string): Segment => ({
    ...segment,
    id: name(segment.id),
    steps: segment.steps.map((step) => ({ ...step, id: name(step.id) })),
    perishables: segment.perishables.map((lot) => ({
      ...lot,
      id: name(lot.id),
      spans: lot.spans.map((span) => ({
        ...span,
        fromStepId: name(span.fromStepId),
        toStepId: name(span.toStepId),
      })),
    })),
  });
  return {
    ...file,
    episode: {
      ...episode,
      segments: copies.flatMap((name) => episode.segments.map((one) => copied(one, name))),
      links: copies.flatMap((name) =>
        episode.links.map((link) => ({
          ...link,
          id: name(link.id),
          fromStepId: name(link.fromStepId),
          toStepId: name(link.toStepId),
        })),
      ),
    },
    day: {
      ...day,
      kind: 'packed',
      wrapByMin: null,
      pins: [],
      segments: copies.flatMap((name) =>
        day.segments.map((one) => ({ ...one, id: name(one.id), segmentId: name(one.segmentId) })),
      ),
    },
  };
}
