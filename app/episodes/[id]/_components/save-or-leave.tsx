import { Button, ButtonLink, type ButtonTone } from '../../../_ui/button';

interface Props {
  readonly submit: string;
  /** The row without its form; without it there is nothing to leave, as where something is added. */
  readonly cancelHref: string | undefined;
  readonly tone?: ButtonTone;
  readonly pending?: boolean;
  readonly className?: string;
}

/** Ends a form of the episode page: saves it, or leaves all as it was. */
export function SaveOrLeave({
  submit,
  cancelHref,
  tone = 'plain',
  pending = false,
  className = '',
}: Props) {
  return (
    <div className={`flex flex-wrap gap-3 ${className}`}>
      <Button tone={tone} aria-disabled={pending || undefined}>
        {submit}
      </Button>
      {cancelHref && (
        <ButtonLink href={cancelHref} scroll={false}>
          Leave as it was
        </ButtonLink>
      )}
    </div>
  );
}
