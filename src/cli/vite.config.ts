import { chmodSync, copyFileSync, mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const empty = fileURLToPath(new URL('../lib/print/pens/empty.ts', import.meta.url));
const faces = JSON.parse(
	readFileSync(new URL('./font-files.json', import.meta.url), 'utf8'),
) as Record<string, string>;

/**
 * The command on its own, with everything it needs, the typefaces beside it. The client of a shared
 * store, which is fetched only for one, makes parts of their own.
 */
export default defineConfig({
	publicDir: false,
	resolve: { alias: { canvg: empty, html2canvas: empty, dompurify: empty } },
	ssr: { noExternal: true },
	build: {
		outDir: 'dist/cli',
		emptyOutDir: false,
		target: 'node20',
		rolldownOptions: {
			output: { entryFileNames: 'kerf-and-nap.js', chunkFileNames: 'parts/[name].js' },
		},
	},
	plugins: [
		{
			name: 'typefaces-and-the-right-to-run',
			writeBundle({ dir }) {
				const out = dir ?? 'dist/cli';
				const { resolve } = createRequire(import.meta.url);
				mkdirSync(join(out, 'fonts'), { recursive: true });
				for (const [face, file] of Object.entries(faces)) {
					copyFileSync(resolve(file), join(out, 'fonts', `${face}.ttf`));
				}
				chmodSync(join(out, 'kerf-and-nap.js'), 0o755);
			},
		},
	],
});
