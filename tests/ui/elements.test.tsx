import { renderToStaticMarkup } from 'react-dom/server';
import type { ReactElement } from 'react';
import { describe, expect, test, vi } from 'vitest';
import type { Figure } from '#lib/figures/figure';
import { Balance } from '../../app/_ui/balance';
import { Button, ButtonLink, buttonClass } from '../../app/_ui/button';
import { DayColumns } from '../../app/_ui/day-columns';
import { FigureList, FigureText, FigureView } from '../../app/_ui/figure-view';
import { AmountField } from '../../app/_ui/form/amount-field';
import { ErrorList } from '../../app/_ui/form/error-list';
import { ChoiceField, TextField } from '../../app/_ui/form/field';
import { UNTOUCHED, errorsAt, type FormState } from '../../app/_ui/form/form-state';
import { EpisodeNav, PageNav } from '../../app/_ui/page-nav';
import { RunningOrder } from '../../app/_ui/running-order';
import { SlateHead } from '../../app/_ui/slate-head';
import { Table, Td, Th, Tr } from '../../app/_ui/table';
import { THEMES, themeFrom } from '../../app/_ui/theme/theme';

vi.mock('next/navigation', () => ({ usePathname: () => '/episodes/e1/day' }));

const html = (element: ReactElement) => renderToStaticMarkup(element);
/** What is read, without the tags. */
const words = (element: ReactElement) =>
  html(element)
    .replace(/<svg.*?<\/svg>/gs, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

const protein: Figure = {
  nutrient: 'protein',
  value: 112,
  low: 108,
  high: 118,
  likelyLow: 110,
  likelyHigh: 114,
  missing: [],
  provisional: [],
  sources: [],
};
const paprika = { lineId: 'l1', text: 'smoked paprika', reason: 'noValue' } as const;

describe('a figure', () => {
  const view = (figure: Figure) =>
    words(
      <FigureList>
        <FigureView figure={figure} />
      </FigureList>,
    );

  test('shows name, number, unit and range', () => {
    expect(view(protein)).toBe('protein 112 g likely 110–114, digits allow 108–118');
  });

  test('with a missing part reads "at least" and names it', () => {
    const figure = { ...protein, high: null, likelyHigh: null, missing: [paprika] };
    expect(view(figure)).toMatch(/^protein at least 108 g .*smoked paprika/);
  });

  test('that is open shows the word and no number', () => {
    const open = { ...protein, low: null, high: null, likelyLow: null, likelyHigh: null };
    const text = view({ ...open, missing: [{ ...paprika, reason: 'noGrams' }] });
    expect(text).toBe('protein open no grams for smoked paprika');
    expect(words(<FigureText figure={open} />)).toBe('open');
  });

  test('in a line keeps its unit', () => {
    expect(words(<FigureText figure={protein} />)).toBe('112 g');
  });
});

test('a verdict is a word beside its balance, and the drawing is silent', () => {
  const markup = html(<Balance verdict="off" words="off by 7" />);
  expect(markup).toContain('off by 7');
  expect(markup).toMatch(/<svg[^>]*aria-hidden="true"/);
});

describe('the slate and the running order', () => {
  test('the slate holds the page’s one main heading and its cells by name', () => {
    const markup = html(
      <SlateHead kind="Episode" title="Harbour day" cells={[{ name: 'Film', value: '12 Dec' }]} />,
    );
    expect(markup).toMatch(/<h1[^>]*>Harbour day<\/h1>/);
    expect(markup).toMatch(/<dt[^>]*>Film<\/dt><dd[^>]*>12 Dec<\/dd>/);
  });

  test('the upper stick stands open only until it is shut', () => {
    expect(html(<SlateHead kind="Episode" title="a" shut={false} />)).toContain('stick-open');
    expect(html(<SlateHead kind="Episode" title="a" shut />)).not.toContain('stick-open');
  });

  test('sticks are as wide as their runtime, striped for a dish and plain for talk', () => {
    const markup = html(
      <RunningOrder
        total="4:05"
        parts={[
          { id: 'a', kind: 'talk', title: 'Hook', seconds: 40, runtime: '0:40' },
          { id: 'b', kind: 'dish', title: 'Skillet', seconds: 205, runtime: '3:25', href: '#b' },
        ]}
      />,
    );
    expect(markup.match(/flex-grow:\d+/g)).toEqual(['flex-grow:40', 'flex-grow:205']);
    const [talk = '', dish = ''] = markup.split('</li>');
    expect(talk).not.toMatch(/class="[^"]*\bsticks\b/);
    expect(dish).toMatch(/class="[^"]*\bsticks\b/);
    expect(dish).toContain('href="#b"');
  });
});

describe('a field', () => {
  const problem = { path: 'title', code: 'too-short', message: 'The title is empty.' };
  const refused: FormState = {
    problems: [problem],
    typed: { title: 'as typed' },
    done: '',
    rev: null,
    round: 0,
    attempt: 1,
  };

  test('belongs to its label, hint and error, and shows again what was typed', () => {
    const markup = html(
      <TextField form="f" name="title" label="Title" hint="Short." state={refused} initial="old" />,
    );
    expect(markup).toContain('for="f-title"');
    expect(markup).toContain('id="f-title"');
    expect(markup).toContain('aria-describedby="f-title-hint f-title-error"');
    expect(markup).toContain('aria-invalid="true"');
    expect(markup).toContain('value="as typed"');
    expect(markup).toMatch(/id="f-title-error"[^>]*>The title is empty\./);
  });

  test('without fault claims none', () => {
    const markup = html(<TextField form="f" name="title" label="Title" state={UNTOUCHED} />);
    expect(markup).not.toContain('aria-invalid=');
    expect(markup).not.toContain('aria-describedby=');
  });

  test('takes the faults of paths within it, and not those of a longer name', () => {
    const problems = ['amount', 'amount.low', 'amount[0]', 'amounts'].map((path) => ({
      path,
      code: 'x',
      message: path,
    }));
    const found = errorsAt({ ...UNTOUCHED, problems }, 'amount').map(({ path }) => path);
    expect(found).toEqual(['amount', 'amount.low', 'amount[0]']);
  });

  test('of choices keeps the chosen one', () => {
    const choices = [
      { value: 'raw', words: 'raw' },
      { value: 'cooked', words: 'cooked' },
    ];
    const markup = html(
      <ChoiceField form="f" name="state" label="State" choices={choices} initial="cooked" />,
    );
    expect(markup).toMatch(/<option value="cooked" selected=""/);
  });

  test('of an amount always carries its unit', () => {
    const grams = [{ value: 'g', words: 'g' }];
    const one = html(
      <AmountField form="f" name="q" label="Amount" unitName="unit" units={grams} />,
    );
    expect(one).toContain('Amount, g');
    expect(one).toContain('<input type="hidden" name="unit" value="g"/>');
    const units = [...grams, { value: 'oz', words: 'oz' }];
    const two = html(
      <AmountField form="f" name="q" label="Amount" unitName="unit" units={units} />,
    );
    expect(two).toContain('Unit of amount');
  });

  test('with a fault is listed, led to, and said aloud', () => {
    const markup = html(<ErrorList form="f" state={refused} fields={['title']} />);
    expect(markup).toMatch(/role="alert".*href="#f-title".*The title is empty\./s);
    expect(words(<ErrorList form="f" state={UNTOUCHED} fields={[]} />)).toBe('');
  });
});

describe('buttons', () => {
  test('of the filming day are at least 56 px high', () => {
    // min-h-14 is 14 steps of 0.25 rem of 16 px.
    expect(buttonClass('go', 'day').split(' ')).toContain('min-h-14');
  });

  test('that download are fetched by the browser', () => {
    expect(
      html(
        <ButtonLink href="/x" download>
          File
        </ButtonLink>,
      ),
    ).toMatch(/<a [^>]*download/);
    expect(html(<Button>Save</Button>)).toContain('type="submit"');
  });
});

describe('tables and the day', () => {
  test('a table is named, its heads are heads, and an open row is hatched', () => {
    const markup = html(
      <Table caption="Ingredients" head={<Th number>grams</Th>}>
        <Tr open>
          <Td number>open</Td>
        </Tr>
      </Table>,
    );
    expect(markup).toMatch(/<caption[^>]*>Ingredients<\/caption>/);
    expect(markup).toContain('<th scope="col"');
    expect(markup).toMatch(/<tr class="[^"]*hatch/);
  });

  test('columns of the day say each block with its times', () => {
    const text = words(
      <DayColumns
        startMin={540}
        endMin={600}
        hour={(min) => `h${min}`}
        now={{ min: 550, text: '9:10' }}
        columns={[
          {
            id: 'hands',
            name: 'Hands',
            blocks: [
              {
                id: 'a',
                startMin: 540,
                endMin: 560,
                start: '9:00',
                end: '9:20',
                title: 'Mix',
                detail: 'and press',
                tone: 'hand',
              },
            ],
          },
        ]}
      />,
    );
    expect(text).toBe('Hands h540 h600 9:00 to 9:20: Mix and press now 9:10');
  });
});

describe('navigation and theme', () => {
  test('says which page is the current one', () => {
    const current = (markup: string) =>
      [...markup.matchAll(/<a [^>]*aria-current="page"[^>]*>([^<]*)/g)].map((m) => m[1]);
    expect(current(html(<PageNav />))).toEqual(['Season']);
    expect(current(html(<EpisodeNav id="e1" />))).toEqual(['Day']);
  });

  test('a theme is one of three, and anything else is the device’s', () => {
    for (const theme of THEMES) expect(themeFrom(theme)).toBe(theme);
    expect(themeFrom('pink')).toBe('device');
    expect(themeFrom(undefined)).toBe('device');
  });
});
