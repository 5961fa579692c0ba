'use strict';
require('./node-version.cjs').requireNode();
const { describeFailure } = require('./failure.cjs');
const { leaveOnSignals } = require('./run.cjs');
const { takeTurn, giveTurn } = require('./turn.cjs');
const { install } = require('./install.cjs');
const { generateClient } = require('./client.cjs');

async function main() {
  await takeTurn();
  await install();
  await generateClient();
}

leaveOnSignals(() => {
  giveTurn();
  return undefined;
});
main()
  .catch((error) => {
    console.error(describeFailure(error));
    process.exitCode = 1;
  })
  .finally(giveTurn);
