import { ensure } from '../ensure.js';
import { fetchPrograms } from '../programs.js';
import { runTypeScript } from '../tool.js';

await ensure();
await fetchPrograms();
await runTypeScript('src/setup/trust/trust.ts');
