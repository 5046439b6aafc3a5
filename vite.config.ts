import { sveltekit } from '@sveltejs/kit/vite';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// jsPDF asks for three packages that only its HTML import needs; we never call that (385 kB saved).
const empty = fileURLToPath(new URL('./src/lib/print/pens/empty.ts', import.meta.url));

export default defineConfig({
	plugins: [sveltekit()],
	resolve: { alias: { canvg: empty, html2canvas: empty, dompurify: empty } },
	worker: { format: 'es', plugins: () => [sveltekit()] },
	server: { fs: { allow: ['shared', 'node_modules'] } },
	test: {
		include: ['tests/**/*.test.ts'],
		exclude: ['tests/browser/**'],
		testTimeout: 60_000,
	},
});
