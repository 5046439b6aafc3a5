import adapter from '@sveltejs/adapter-static';
import { readFileSync } from 'node:fs';

const { version } = JSON.parse(readFileSync(new URL('./package.json', import.meta.url), 'utf8'));

/** @type {import('@sveltejs/kit').Config} */
export default {
	kit: {
		adapter: adapter({ fallback: '404.html' }),
		// The default version is the build's clock; a fixed one makes two builds of one commit
		// equal.
		version: { name: version },
		files: { serviceWorker: 'src/service-worker.ts' },
		paths: { relative: true },
	},
};
