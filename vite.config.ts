import { sveltekit } from '@sveltejs/kit/vite';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// jsPDF asks for three packages that only its HTML import needs; we never call that (385 kB saved).
const empty = fileURLToPath(new URL('./src/lib/print/pens/empty.ts', import.meta.url));

// A deep run tries every law on many times the cases (tests/depth.ts).
const deep = process.env['DEPTH'] === 'deep';

export default defineConfig({
	plugins: [sveltekit()],
	resolve: { alias: { canvg: empty, html2canvas: empty, dompurify: empty } },
	worker: { format: 'es', plugins: () => [sveltekit()] },
	server: { fs: { allow: ['shared', 'node_modules'] } },
	test: {
		include: ['tests/**/*.test.ts'],
		exclude: ['tests/browser/**'],
		setupFiles: ['tests/depth.ts'],
		testTimeout: deep ? 3_600_000 : 60_000,
		// One process runs all files, one after the other: loading everything anew for each took
		// longer than the tests.
		isolate: false,
	},
});
