'use strict';

const EVERY_S = 20;

/**
 * A line that shows a long step going on: rewritten each second on a terminal, repeated every 20 s
 * in a log.
 * @param {string} label
 * @param {NodeJS.WriteStream} [out]
 */
function progress(label, out = process.stdout) {
  const began = Date.now();
  const seconds = () => (Date.now() - began) / 1000;
  const live = out.isTTY === true;
  out.write(live ? `· ${label} …` : `· ${label} …\n`);
  const timer = setInterval(
    () => {
      const text = `· ${label} … ${Math.round(seconds())} s`;
      out.write(live ? `\r${text}` : `${text}\n`);
    },
    live ? 1000 : EVERY_S * 1000,
  );
  timer.unref();
  /** @param {string} mark @param {string} note */
  const end = (mark, note) => {
    clearInterval(timer);
    const text = `${mark} ${label}${note === '' ? '' : `: ${note}`} (${seconds().toFixed(1)} s)`;
    out.write(live ? `\r\x1b[K${text}\n` : `${text}\n`);
  };
  return {
    /** @param {string} [note] */
    done: (note = '') => end('✓', note),
    /** @param {string} [note] */
    failed: (note = 'failed') => end('✗', note),
  };
}

module.exports = { progress };
