import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../tool.js';
import type { Numbered } from './find';
import { switched } from './switched';

/** What the tests of the rooms need; the screen is left behind. */
const COPIED = ['src', 'tests', 'shared', 'package.json', 'tsconfig.cli.json'];

const CONFIG = `import { defineConfig } from 'vitest/config';
export default defineConfig({
	resolve: { alias: { canvg: './src/lib/print/pens/empty.ts', html2canvas: './src/lib/print/pens/empty.ts', dompurify: './src/lib/print/pens/empty.ts' } },
	test: {
		include: ['tests/**/*.test.ts'],
		setupFiles: ['tests/depth.ts', 'src/setup/trust/mutants/laws-seed.ts'],
		runner: './src/setup/trust/mutants/in-process.ts',
		testTimeout: 600_000,
		isolate: false,
		maxWorkers: 1,
		fileParallelism: false,
		pool: 'forks',
	},
});
`;

/** A copy of the project with all these mutants in it, each behind its switch. */
export function makeScratch(folder: string, mutants: readonly Numbered[]): void {
	rmSync(folder, { recursive: true, force: true });
	mkdirSync(folder, { recursive: true });
	for (const name of COPIED) cpSync(join(ROOT, name), join(folder, name), { recursive: true });
	symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'), 'junction');
	writeFileSync(join(folder, 'tsconfig.json'), '{ "extends": "./tsconfig.cli.json" }\n');
	writeFileSync(join(folder, 'vitest.config.ts'), CONFIG);
	for (const file of new Set(mutants.map((m) => m.file))) {
		const text = readFileSync(join(ROOT, file), 'utf8');
		const own = mutants.filter((m) => m.file === file);
		writeFileSync(join(folder, file), switched(text, own));
	}
}
