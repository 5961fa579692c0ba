import { ButtonForm } from '../../_forms/button-form';
import { Working } from '../../_forms/working';
import { Button, ButtonLink, type ButtonTone } from '../../_ui/button';
import { CopyButton } from '../../_ui/copy-button';
import { DownloadLink } from '../../_ui/download-link';
import { Icon } from '../../_ui/icons';
import { PastedText } from '../../_ui/pasted-text';
import { PrintButton } from '../../_ui/print-button';
import { MoveHandle } from '../../_ui/reorder/move-handle';
import { Reorder } from '../../_ui/reorder/reorder';
import { SayLine } from '../../_ui/say-line';
import { StatusLine } from '../../_ui/status-line';
import { sayNo } from '../actions';
import type { Specimen } from './specimen';

const TONES: readonly ButtonTone[] = ['go', 'plain', 'hand', 'bare'];
const MOVED = ['Barley skillet', 'Skyr pots', 'Meatloaf'];
const ROW = 'flex flex-wrap items-center gap-3';

export const ACTS: readonly Specimen[] = [
  {
    name: 'Button',
    when: 'Go for the one thing a form is for, plain for the others, hand for what takes something away, bare beside a text.',
    show: () => (
      <div className="grid gap-4">
        {TONES.map((tone) => (
          <div key={tone} className={ROW}>
            <Button type="button" tone={tone}>
              {tone}
            </Button>
            <Button type="button" tone={tone} data-shown="focus">
              focused
            </Button>
            <Button type="button" tone={tone} aria-disabled>
              busy
            </Button>
            <Button type="button" tone={tone} disabled>
              disabled
            </Button>
            <Button type="button" tone={tone} size="small">
              small
            </Button>
          </div>
        ))}
        <Button type="button" tone="go" size="day">
          On the filming day, 56 px
        </Button>
      </div>
    ),
  },
  {
    name: 'Form at work',
    when: 'Below the button of a form that takes some seconds: it says what is being done.',
    show: () => (
      <Working pending words="Reading your texts and looking up the foods: a few seconds." />
    ),
  },
  {
    name: 'Link as a button',
    when: 'For what leads elsewhere and weighs as much as a button; a download is fetched by the browser.',
    show: () => (
      <div className={ROW}>
        <ButtonLink href="/look">To a page</ButtonLink>
        <ButtonLink href="/look" tone="go">
          The first step
        </ButtonLink>
      </div>
    ),
  },
  {
    name: 'One-button form',
    when: 'For an act that needs no field; press it to see where it tells what it could not do.',
    show: () => (
      <ButtonForm action={sayNo} values={{}} tone="plain">
        Move up
      </ButtonForm>
    ),
  },
  {
    name: 'Order by drag or keys',
    when: 'For a list whose order is the person’s own. Enter on a handle picks up, the arrows choose the place, Enter drops, Escape puts back; here nothing is kept.',
    show: (key) => (
      <Reorder ids={MOVED.map((name) => `${key}-${name}`)} names={MOVED} action={sayNo} hidden={{}}>
        <ul className="border-t border-line">
          {MOVED.map((name) => (
            <li
              key={name}
              data-member={`${key}-${name}`}
              className="flex items-center gap-3 border-b border-line py-1.5 data-held:bg-sunk"
            >
              <MoveHandle id={`${key}-${name}`} what={name} />
              {name}
            </li>
          ))}
        </ul>
      </Reorder>
    ),
  },
  {
    name: 'Copy, print and save',
    when: 'Copy says that it has copied, or selects the text where the browser gives no way; print opens the browser’s own dialog; a file is saved whole or not at all.',
    show: (key) => (
      <div className="grid gap-3">
        <PastedText id={`${key}-text`} text="846 kcal for the whole tray" />
        <CopyButton text="846 kcal for the whole tray" label="Copy" shownIn={`${key}-text`} />
        <PrintButton>Print the day sheet</PrintButton>
        <DownloadLink href="/icon.svg" name="mark.svg">
          Save the mark
        </DownloadLink>
      </div>
    ),
  },
  {
    name: 'Line to say',
    when: 'For the one sentence that is said on camera, as large as a card beside the lens.',
    paper: true,
    show: (key) => (
      <SayLine id={`${key}-line`} text="The whole tray is 846 calories and 112 grams of protein." />
    ),
  },
  {
    name: 'Status line',
    when: 'For what was just done, with the way back; it is read aloud and focus stays where it is.',
    show: () => (
      <>
        <StatusLine
          action={
            <Button type="button" size="small">
              <Icon name="undo" />
              Undo
            </Button>
          }
        >
          Skyr pots were taken out.
        </StatusLine>
        <StatusLine tone="hand">
          <Icon name="warning" /> Two ingredients wait for your word.
        </StatusLine>
        <StatusLine />
      </>
    ),
  },
];
