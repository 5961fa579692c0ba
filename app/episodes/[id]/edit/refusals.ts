import { failed } from '#lib/result';

export const GONE = failed({
  path: '',
  code: 'gone',
  message: 'This is no longer there: open the page again.',
});

export const NOTHING_TICKED = failed({
  path: '',
  code: 'none',
  message: 'Nothing is ticked: tick what is to be added.',
});
