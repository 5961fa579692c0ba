import { NotAtTheDoor } from '../../_ui/not-at-the-door';
import { Button, ButtonLink } from '../../_ui/button';
import { Disclosure } from '../../_ui/disclosure';
import { EmptyState } from '../../_ui/empty-state';
import { Icon, ICON_NAMES } from '../../_ui/icons';
import { Mark } from '../../_ui/mark';
import { NavLink } from '../../_ui/nav-link';
import { EpisodeNav, PageNav } from '../../_ui/page-nav';
import { RunningOrder } from '../../_ui/running-order';
import { ScrollRegion } from '../../_ui/scroll-region';
import { KeyList } from '../../_ui/shortcuts/key-list';
import { shortcutsFor } from '../../_ui/shortcuts/keys';
import { SlateHead } from '../../_ui/slate-head';
import { StageRule } from '../../_ui/stage-rule';
import { ThemeSwitch } from '../../_ui/theme/theme-switch';
import { STANDING_WORDS, type LockStanding } from '#lib/lock/lock-standing';
import type { Stage } from '#lib/overview/stage';
import { ShownFailure } from './tried';
import type { Specimen } from './specimen';

const STAGES: readonly Stage[] = ['sketch', 'numbersReady', 'published'];
const STANDINGS: readonly LockStanding[] = ['draft', 'locked', 'broken'];

export const PLACES: readonly Specimen[] = [
  {
    name: 'Mark and icons',
    when: 'The mark stands beside the name alone. An icon stands beside words that say the same, and is silent.',
    paper: true,
    show: () => (
      <>
        <p className="flex items-center gap-2.5 font-slate text-head font-semibold">
          <Mark /> Scale &amp; Slate
        </p>
        <ul className="mt-4 grid grid-cols-[repeat(auto-fill,minmax(7rem,1fr))] gap-3">
          {ICON_NAMES.map((name) => (
            <li key={name} className="flex items-center gap-2">
              <Icon name={name} size="large" /> {name}
            </li>
          ))}
        </ul>
        <p className="mt-3">
          <Icon name="oven" /> In a line of text it is as high as the text.
        </p>
      </>
    ),
  },
  {
    name: 'Slate',
    when: 'The head of every page. Its upper stick stands open until the numbers are locked.',
    show: () =>
      STANDINGS.map((standing) => (
        <SlateHead
          key={standing}
          kind="Episode"
          title="Harbor day"
          shut={standing === 'locked'}
          cells={[
            { name: 'Film', value: 'Sat 12 Dec' },
            { name: 'Numbers', value: STANDING_WORDS[standing] },
          ]}
        />
      )),
  },
  {
    name: 'Running order',
    when: 'Sticks as wide as their runtime, striped for a dish, plain for talk; under one another on a phone.',
    paper: true,
    show: (key) => (
      <RunningOrder
        total="9:10"
        note="planned"
        parts={[
          { id: 'a', kind: 'talk', title: 'Hook', seconds: 50, runtime: '0:50' },
          {
            id: 'b',
            kind: 'dish',
            title: 'Barley skillet',
            seconds: 205,
            runtime: '3:25',
            note: '642 kcal',
            href: `#look-running-order-${key}`,
          },
          {
            id: 'c',
            kind: 'dish',
            title: 'Skyr pots',
            seconds: 150,
            runtime: '2:30',
            note: 'open',
          },
        ]}
      />
    ),
  },
  {
    name: 'Stage',
    when: 'For where an episode stands: the word, and a rule with a tick for each stage.',
    show: () => (
      <div className="grid gap-3">
        {STAGES.map((stage) => (
          <StageRule key={stage} stage={stage} />
        ))}
      </div>
    ),
  },
  {
    name: 'Navigation',
    when: 'At the head of every page, and of every page of an episode; the page one is on is underlined.',
    show: () => (
      <>
        <PageNav />
        <EpisodeNav id="sample" />
        <NotAtTheDoor>
          <NavLink href="/look">Here</NavLink>
        </NotAtTheDoor>
      </>
    ),
  },
  {
    name: 'Light',
    when: 'At the foot of every page: as the device, by day, or for a dark kitchen. Works before any script.',
    show: (key) => <ThemeSwitch theme="device" id={key} />,
  },
  {
    name: 'Keys',
    when: 'In the dialog that “?” opens: every key of the page one is on. All keys can be switched off there.',
    show: () => <KeyList shortcuts={shortcutsFor('/episodes/sample')} />,
  },
  {
    name: 'Folded away',
    when: 'For what only some need; it stays as the person leaves it.',
    show: () => (
      <>
        <Disclosure words="Grams, peel, what is left behind">What was folded away.</Disclosure>
        <Disclosure words="Add a dish" large open>
          Stands open where there is nothing else to do.
        </Disclosure>
      </>
    ),
  },
  {
    name: 'Nothing yet',
    when: 'Wherever a list is empty: what it is for, and the first step.',
    show: () => (
      <EmptyState
        title="Nothing in stock yet"
        action={
          <ButtonLink href="/look" tone="go">
            New food from a label
          </ButtonLink>
        }
      >
        What is in the kitchen is taken off the shopping list.
      </EmptyState>
    ),
  },
  {
    name: 'Failure',
    when: 'Where the program itself failed: what to do, and what to quote.',
    show: () => <ShownFailure />,
  },
  {
    name: 'Scrolls in itself',
    when: 'Around what is wider than a phone and cannot be narrower; reached by keyboard.',
    show: (key) => (
      <ScrollRegion label={`Wide, ${key}`}>
        <p className="w-[70rem] border border-line p-2">
          Wider than its place: the page beside it stays where it is.
          <span className="float-right">
            <Button type="button" size="small">
              at the far end
            </Button>
          </span>
        </p>
      </ScrollRegion>
    ),
  },
];
