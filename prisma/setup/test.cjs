'use strict';
require('./node-version.cjs').requireNode();
require('./test-run.cjs').main(process.argv.slice(2));
