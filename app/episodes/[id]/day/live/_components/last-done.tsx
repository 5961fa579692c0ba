import { Button } from '../../../../../_ui/button';

interface Props {
  readonly title: string;
  readonly at: string;
  readonly onTakeBack: () => void;
}

/** What was marked last, to be taken back at once after a slip of the finger. */
export function LastDone({ title, at, onTakeBack }: Props) {
  return (
    <section aria-labelledby="last-done">
      <h2 id="last-done" className="lettering text-lead text-soft uppercase">
        Last done
      </h2>
      <p className="mb-2 text-lead">
        <b className="font-semibold">{title}</b>, {at}
      </p>
      <Button type="button" size="day" onClick={onTakeBack}>
        Not done after all<span className="unseen"> {title}, done last</span>
      </Button>
    </section>
  );
}
