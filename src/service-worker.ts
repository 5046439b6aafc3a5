/// <reference types="@sveltejs/kit" />
import { base, build, files, prerendered, version } from '$service-worker';

/*
 * After the first visit the planner works without a network: every chunk (the worker's and the PDF
 * library's too), the faces and the pages are kept. A new version is fetched whole before it takes
 * over, so that no page meets half of it.
 */
const here = globalThis as unknown as ServiceWorkerGlobalScope;
const SHELF = `kerf-and-nap ${version}`;
const KEPT = [...new Set([...build, ...files, ...prerendered])];

here.addEventListener('install', (event) => {
	event.waitUntil(keepAll().then(() => here.skipWaiting()));
});

here.addEventListener('activate', (event) => {
	event.waitUntil(clearOld().then(() => here.clients.claim()));
});

here.addEventListener('fetch', (event) => {
	const { request } = event;
	const url = new URL(request.url);
	if (request.method !== 'GET' || url.origin !== here.location.origin) return;
	event.respondWith(answer(request, url));
});

async function keepAll(): Promise<void> {
	const shelf = await caches.open(SHELF);
	await shelf.addAll(KEPT);
}

async function clearOld(): Promise<void> {
	const names = await caches.keys();
	const old = names.filter((name) => name.startsWith('kerf-and-nap ') && name !== SHELF);
	await Promise.all(old.map((name) => caches.delete(name)));
}

/** Kept files first; what is asked for beyond them comes from the network and is kept as well. */
async function answer(request: Request, url: URL): Promise<Response> {
	const shelf = await caches.open(SHELF);
	const kept = await shelf.match(url.pathname, { ignoreSearch: true });
	if (kept) return kept;
	try {
		const fetched = await fetch(request);
		if (fetched.ok && fetched.type === 'basic') await shelf.put(url.pathname, fetched.clone());
		return fetched;
	} catch (offline) {
		// Any address inside the planner opens the planner; it finds its page by itself.
		const page = request.mode === 'navigate' ? await shelf.match(`${base}/`) : undefined;
		if (page) return page;
		throw offline;
	}
}
