import type { Role } from '../language';
import { all, framed, list, phrasesOf } from './words';

/** Who says or thinks something of a dish who has not made it. */
const OTHERS = phrasesOf(
  'people, most people, some people, other people, lots of people, a lot of people, everyone, everybody, somebody, someone, they, he, she, folk, folks, the internet, google, half the internet, the comments, someone in the comments, somebody in the comments, some guy, this guy, that guy, one guy, a guy, some fella, some bloke, some lad, some woman, a website, some website, one website, websites, other channels, other videos, other creators, influencers, other people online, people online, someone online, somebody online, half of you, some of you, most of you',
);

/** Their verbs; a number that they lead to is theirs. */
const SAY = list(
  'say says said think thinks thought assume assumes assumed reckon reckons reckoned claim claims claimed guess guesses guessed swear swears insist insists insisted wrote comment commented expect expects write writes',
);

/** The same in a form that no one says of themselves, whoever stands before. */
const SAY_THEY = list('reckons claims assumes swears insists guesses thinks');

/** What leads to a number that others say or think (common practice, no source). */
export const HEARSAY: [string, Role][] = [
  ...OTHERS.flatMap((who) =>
    SAY.map((verb): [string, Role] => [`${who} ${verb}`, { cat: 'hearsay' }]),
  ),
  ...OTHERS.flatMap((who) =>
    framed(
      '{} will say, {} would say, {} will tell you, {} told me, {} keeps saying, {} keep saying, {} always say',
      [who],
    ).map((phrase): [string, Role] => [phrase, { cat: 'hearsay' }]),
  ),
  ...all<Role>(SAY_THEY.join(', '), { cat: 'hearsay' }),
  ...all<Role>(
    "would have you believe, told me, told us, commented that, i read that, i read somewhere, i saw that, i saw online, i heard that, i heard it's, i heard it was, i saw somewhere, i've seen it at, had a video where, have a video where, did a video where, posted a video where, made a video where, in his video, in her video, in their video, on his channel, on her channel, on their channel, in someone elses video, in some video, says online",
    { cat: 'hearsay' },
  ),
];
