import { Balance, BalanceMark } from '../../_ui/balance';
import { FigureList, FigureText, FigureView } from '../../_ui/figure-view';
import { partsBar } from '../../_ui/bar-geometry';
import { PartsBar } from '../../_ui/parts-bar';
import { PartsBarMarks } from '../../_ui/parts-bar-marks';
import { NotConfirmed, Provisional } from '../../_ui/provisional';
import { RowHead, Table, Td, Th, Tr } from '../../_ui/table';
import { Whisker } from '../../_ui/whisker';
import { BARS, FIGURES } from './figure-samples';
import type { Specimen } from './specimen';

const ROWS = [
  { words: '150 g pearl barley', grams: '150', figure: FIGURES.known, state: 'known' },
  { words: 'a handful of rocket', grams: '20 ± 7', figure: FIGURES.provisional, state: 'waits' },
  { words: 'salt to taste', grams: 'open', figure: FIGURES.open, state: 'open' },
] as const;

export const NUMBERS: readonly Specimen[] = [
  {
    name: 'Figure',
    when: 'For a number that is the point: the value, its whisker on one scale for all, its range in words. The lead size is for the one number an episode is about.',
    paper: true,
    show: () => (
      <FigureList>
        <FigureView figure={FIGURES.energy} size="lead" />
        <FigureView figure={FIGURES.known} />
        <FigureView figure={FIGURES.wide} size="usual" />
      </FigureList>
    ),
  },
  {
    name: 'Figure that is incomplete',
    when: 'Where an ingredient lacks a value: at least, at most, or open with the cause; never a zero.',
    paper: true,
    show: () => (
      <FigureList>
        <FigureView figure={FIGURES.atLeast} />
        <FigureView figure={FIGURES.atMost} />
        <FigureView figure={FIGURES.open} />
      </FigureList>
    ),
  },
  {
    name: 'Figure that waits or gave way',
    when: 'Not confirmed: a food in it is only the best match, so it is never copied. Tallied: it was rounded so that what is published together adds up, and says so.',
    paper: true,
    show: () => (
      <FigureList>
        <FigureView figure={FIGURES.provisional} />
        <FigureView figure={FIGURES.known} note="adds up only because of rounding" />
      </FigureList>
    ),
  },
  {
    name: 'Figure in a line',
    when: 'For a number within words or a table: unit always beside it, range on asking or as a small whisker; it leads to its breakdown.',
    show: () => (
      <p>
        One of two has <FigureText figure={FIGURES.energy} />,{' '}
        <FigureText figure={FIGURES.provisional} /> of protein and{' '}
        <FigureText figure={FIGURES.atLeast} /> of fiber; salt is{' '}
        <FigureText figure={FIGURES.open} />. In a table:{' '}
        <FigureText figure={FIGURES.known} href="#look-figure-in-a-line" whisker />.
      </p>
    ),
  },
  {
    name: 'Not confirmed',
    when: 'Around any value, or as the hatch of a row, that counts on the page but waits for the person’s word.',
    show: () => (
      <>
        <Provisional what="best of 3 foods that fit">Barley, pearled, raw</Provisional>
        <p className="mt-3">
          In a line: <Provisional inline>Barley, pearled</Provisional>.
        </p>
      </>
    ),
  },
  {
    name: 'Whisker',
    when: 'Only within a figure: hairline for what digits allow, bar for what is likely, tick at the value; ± 20 % wide, cut ends go on.',
    show: () => (
      <div className="flex flex-wrap gap-6">
        {[FIGURES.known, FIGURES.wide, FIGURES.atLeast, FIGURES.atMost, FIGURES.open].map(
          (figure) => (
            <Whisker key={figure.nutrient} figure={figure} />
          ),
        )}
      </div>
    ),
  },
  {
    name: 'Bar of parts',
    when: 'For where a number comes from: ingredients of a dish, or dishes of a day held against its targets; textures and words tell the parts apart, and the range stands beside it.',
    paper: true,
    show: () => (
      <div className="grid gap-6 md:grid-cols-2">
        {BARS.map((bar) => (
          <PartsBar
            key={bar.nutrient}
            bar={bar}
            note={
              bar.nutrient === 'energyKcal'
                ? () => <FigureText figure={FIGURES.known} />
                : undefined
            }
          >
            <FigureText figure={bar.figure} whisker />
          </PartsBar>
        ))}
      </div>
    ),
  },
  {
    name: 'Marks of a bar',
    when: 'Only within a bar of parts: the drawing alone, silent, with what it says in words beside it.',
    show: () => (
      <div className="flex gap-6">
        {BARS.map((bar) => {
          const drawing = partsBar(bar);
          return (
            <div
              key={bar.nutrient}
              className="relative w-16"
              style={{ height: `${drawing.height / 16}rem` }}
            >
              <PartsBarMarks drawing={drawing} />
            </div>
          );
        })}
      </div>
    ),
  },
  {
    name: 'Verdict',
    when: 'For what the breakdown says of a sentence or a target: a word and a beam that can be read in black and white.',
    paper: true,
    show: () => (
      <ul className="grid gap-2">
        <li>
          <Balance verdict="agrees" words="agrees with your breakdown" />
        </li>
        <li>
          <Balance verdict="edge" words="at the edge" />
        </li>
        <li>
          <Balance verdict="off" words="off by 7: too much was said" />
        </li>
        <li>
          <Balance verdict="off" words="off by 7: too little was said" heavier="breakdown" />
        </li>
        <li>
          <Balance verdict="unknown" words="can’t say: one ingredient has no grams" />
        </li>
      </ul>
    ),
  },
  {
    name: 'Beam alone',
    when: 'Only where the words of the verdict stand beside it in another way: on a strip, on a button that shows those of one verdict.',
    paper: true,
    show: () => (
      <ul className="flex flex-wrap gap-4">
        {(['agrees', 'edge', 'off', 'unknown'] as const).map((verdict) => (
          <li key={verdict} className="flex items-center gap-2">
            <BalanceMark verdict={verdict} small /> {verdict}
          </li>
        ))}
      </ul>
    ),
  },
  {
    name: 'Table',
    when: 'For rows that are compared: numbers at the right, open rows hatched, rows that wait hatched the other way; a wide one scrolls in itself.',
    paper: true,
    show: (key) => (
      <Table
        caption={`Ingredients, ${key}`}
        head={
          <>
            <Th>ingredient</Th>
            <Th number>grams</Th>
            <Th number>protein</Th>
            <Th side>source</Th>
          </>
        }
      >
        {ROWS.map(({ words, grams, figure, state }) => (
          <Tr key={words} open={state === 'open'} provisional={state === 'waits'}>
            <RowHead>
              {words}
              {state === 'waits' && <NotConfirmed what="Arugula, raw" />}
            </RowHead>
            <Td number>{grams}</Td>
            <Td number>
              <FigureText figure={figure} />
            </Td>
            <Td side>SR28</Td>
          </Tr>
        ))}
      </Table>
    ),
  },
];
