import Link from 'next/link';
import { ButtonLink } from '../../../../_ui/button';
import type { PutRight } from './view';

interface Props {
  readonly episodeId: string;
  readonly of: PutRight;
  readonly asButton?: boolean;
}

/** That viewers know other numbers, and the way to say so: locking again and copying tells nobody. */
export function PutRightNote({ episodeId, of, asButton = false }: Props) {
  const { numbers, seq, isPublic, isCopied } = of;
  const href = `/episodes/${episodeId}/corrections`;
  const words = 'Put it right in public';
  return (
    <>
      <p className="mt-1">
        {numbers === 1 ? 'A number' : `${String(numbers)} numbers`}{' '}
        {isCopied ? 'copied with' : 'of'} lock {seq}{' '}
        {numbers === 1 ? 'is another one' : 'are others'} now.{' '}
        {isPublic
          ? `${isCopied ? 'That text' : 'The episode'} is out: the correction says so and locks the numbers anew; locking and copying alone tells nobody.`
          : 'If that text is out already:'}{' '}
        {!asButton && (
          <Link className="link" href={href}>
            {words}
          </Link>
        )}
      </p>
      {asButton && (
        <p className="mt-2">
          <ButtonLink href={href} tone={isPublic ? 'go' : 'plain'}>
            {words}
          </ButtonLink>
        </p>
      )}
    </>
  );
}
