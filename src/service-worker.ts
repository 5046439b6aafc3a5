/// <reference types="@sveltejs/kit" />
import { base, build, files, prerendered, version } from '$service-worker';
import {
	answerFrom,
	clearOthers,
	keepWhole,
	mayClear,
	mayTakeOver,
	shelfOf,
	type Version,
} from './worker/app-shelf';

/*
 * After the first visit the planner works without a network: every chunk (the worker's and the PDF
 * library's too), the faces and the pages are kept. A new version is fetched whole and then waits
 * until the last page of the old one is closed, or until the only page there is asks for it.
 */
const here = globalThis as unknown as ServiceWorkerGlobalScope;
const kept = [...new Set([...build, ...files, ...prerendered])];
const mine: Version = { shelf: shelfOf(version, kept), files: kept, start: `${base}/` };

/** What a page says to the worker. */
type Word =
	| { readonly kind: 'take over' }
	/** A page of these files has been opened. */
	| { readonly kind: 'opened'; readonly parts: readonly string[] };

here.addEventListener('install', (event) => {
	event.waitUntil(keepWhole(caches, mine, (path) => new Request(path, { cache: 'no-cache' })));
});

here.addEventListener('activate', (event) => {
	event.waitUntil(begin());
});

here.addEventListener('message', (event) => {
	event.waitUntil(hear(event.data as Word, event.ports[0]));
});

here.addEventListener('fetch', (event) => {
	const { request } = event;
	if (request.method !== 'GET' || new URL(request.url).origin !== here.location.origin) return;
	event.respondWith(answerFrom(caches, mine, request, (asked) => fetch(asked)));
});

/** With a page open, the versions before stay until a page of this one stands alone. */
async function begin(): Promise<void> {
	if ((await windows()) === 0) await clearOthers(caches, mine);
	await here.clients.claim();
}

async function hear(word: Word, port: MessagePort | undefined): Promise<void> {
	const count = await windows();
	if (word.kind === 'opened') {
		if (mayClear(mine, word.parts, count)) await clearOthers(caches, mine);
		return;
	}
	const comes = mayTakeOver(count);
	port?.postMessage(comes);
	if (comes) await here.skipWaiting();
}

async function windows(): Promise<number> {
	const all = await here.clients.matchAll({ type: 'window', includeUncontrolled: true });
	return all.length;
}
