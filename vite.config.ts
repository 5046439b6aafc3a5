import { sveltekit } from '@sveltejs/kit/vite';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// jsPDF asks for three packages that only its HTML import needs; we never call that (385 kB saved).
const empty = fileURLToPath(new URL('./src/lib/print/pens/empty.ts', import.meta.url));

// A deep run tries every law on many times the cases (tests/depth.ts).
const deep = process.env['DEPTH'] === 'deep';

const OF_THEIR_OWN = [
	'tests/store/**/*.test.ts',
	'tests/shop/**/*.test.ts',
	'tests/ui/planning/**/*.test.ts',
	'tests/ui/state/**/*.test.ts',
	'tests/worker/**/*.test.ts',
	'tests/cli/write-files.test.ts',
];

export default defineConfig({
	plugins: [sveltekit()],
	resolve: { alias: { canvg: empty, html2canvas: empty, dompurify: empty } },
	worker: { format: 'es', plugins: () => [sveltekit()] },
	server: { fs: { allow: ['shared', 'node_modules'] } },
	test: {
		setupFiles: ['tests/depth.ts'],
		testTimeout: deep ? 3_600_000 : 60_000,
		projects: [
			{
				extends: true,
				// One process runs these, file after file: loading everything anew for each took
				// longer than the tests.
				test: {
					name: 'rooms',
					include: ['tests/**/*.test.ts'],
					exclude: ['tests/browser/**', ...OF_THEIR_OWN],
					isolate: false,
				},
			},
			{
				extends: true,
				// These put a database, a clock, workers or a disk in the place of the process's
				// own.
				test: { name: 'of their own', include: [...OF_THEIR_OWN], isolate: true },
			},
		],
	},
});
