#!/usr/bin/env node
import { setFlagsFromString } from 'node:v8';
import { run } from './run';

// Left alone, the engine lets what is done with pile up to four times what is in use before it
// clears it away. A pack of hundreds of pages then takes hundreds of megabytes more.
setFlagsFromString('--heap-growing-percent=50');

// A reader that has seen enough (`| head`) closes the pipe: that is no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
	if (error.code === 'EPIPE') process.exit(0);
	throw error;
});

process.exitCode = await run(process.argv.slice(2));
