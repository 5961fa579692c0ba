import type { Program } from '#lib/optimise/program';

/** Rows of the text: one for each bound, `l3` and `h3` for the lower and upper one of row 3. */
export const rowName = (row: number, side: 'low' | 'high'): string => `${side.charAt(0)}${row}`;
export const variableName = (variable: number): string => `x${variable}`;

/**
 * A program in the CPLEX LP format, one term to a line, since readers take lines of some hundred characters only.
 * A sum without terms is written with a factor of 0, so that its bounds are kept.
 */
export function lpText({ goal, variables, rows }: Program): string {
  const sum = (terms: Program['rows'][number]['terms']) =>
    merged(terms)
      .map(({ variable, times }) => `${signed(times)} ${variableName(variable)}`)
      .join('\n ');
  const costs = variables.map(({ cost }, variable) => ({ variable, times: cost }));
  const lines = [goal === 'least' ? 'Minimize' : 'Maximize', ` goal: ${sum(costs)}`, 'Subject To'];
  rows.forEach(({ terms, low, high }, at) => {
    if (low !== null) lines.push(` ${rowName(at, 'low')}: ${sum(terms)} >= ${low}`);
    if (high !== null) lines.push(` ${rowName(at, 'high')}: ${sum(terms)} <= ${high}`);
  });
  lines.push('Bounds');
  variables.forEach(({ low, high }, at) => {
    lines.push(` ${low ?? '-inf'} <= ${variableName(at)} <= ${high ?? '+inf'}`);
  });
  const whole = variables.flatMap((variable, at) =>
    variable.whole ? [` ${variableName(at)}`] : [],
  );
  if (whole.length > 0) lines.push('General', ...whole);
  return `${[...lines, 'End'].join('\n')}\n`;
}

/** Each variable once; a sum of nothing is none of the first variable. */
function merged(terms: Program['rows'][number]['terms']): Program['rows'][number]['terms'] {
  const times = new Map<number, number>();
  for (const term of terms) {
    times.set(term.variable, (times.get(term.variable) ?? 0) + term.times);
  }
  if (times.size === 0) times.set(0, 0);
  return [...times].map(([variable, sum]) => ({ variable, times: sum }));
}

function signed(value: number): string {
  return value < 0 || Object.is(value, -0) ? `- ${-value}` : `+ ${value}`;
}
