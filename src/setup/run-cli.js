import { runCommand } from './command.js';
import { ensure } from './ensure.js';

// `npm run plan -- job.json` means the file where the person stands, not where the project lies.
const { INIT_CWD } = process.env;

await ensure();
if (INIT_CWD) process.chdir(INIT_CWD);
await runCommand();
