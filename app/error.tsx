'use client';

import { Failure } from './_ui/failure';

interface Props {
  readonly error: Error & { readonly digest?: string };
  readonly reset: () => void;
}

export default function PageError({ error, reset }: Props) {
  return <Failure error={error} retry={reset} what="This page could not be shown" />;
}
