import { build, isStale } from './build.js';

/* What goes into the package besides the command: the app, for `kerf-and-nap shop` to serve. */
if (isStale() && (await build()) !== 0) process.exit(1);
