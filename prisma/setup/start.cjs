'use strict';
require('./node-version.cjs').requireNode();
require('./start-up.cjs').main(process.argv.slice(2));
