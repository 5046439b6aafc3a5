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
		// Nothing runs but the app's own files, and nothing is asked of another host. Drawings
		// carry their widths and hatches as style attributes, which run nothing.
		csp: {
			mode: 'hash',
			directives: {
				'default-src': ['none'],
				'script-src': ['self'],
				'worker-src': ['self'],
				'style-src': ['self'],
				'style-src-attr': ['unsafe-inline'],
				'img-src': ['self', 'data:', 'blob:'],
				'font-src': ['self'],
				'connect-src': ['self'],
				'manifest-src': ['self'],
				'frame-src': ['blob:'],
				'base-uri': ['none'],
				'form-action': ['none'],
			},
		},
	},
};
