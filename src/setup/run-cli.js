import { ensure } from './ensure.js';
import { runTypeScript } from './tool.js';

// `npm run plan -- job.json` means the file where the person stands, not where the project lies.
const { INIT_CWD } = process.env;

await ensure();
if (INIT_CWD) process.chdir(INIT_CWD);
await runTypeScript('src/cli/kerf-and-nap.ts');
