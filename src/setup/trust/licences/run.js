import { ensure } from '../../ensure.js';
import { runTypeScript } from '../../tool.js';

await ensure();
await runTypeScript('src/setup/trust/licences/list.ts');
