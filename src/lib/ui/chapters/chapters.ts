export type Chapter = 'build' | 'boards' | 'cloth' | 'order' | 'quote' | 'print';

/** The chapters of a job card, in the order of the work. Each is fetched when it is opened. */
export const CHAPTERS = [
	{ key: 'build', title: 'Build', load: () => import('./build/Build.svelte') },
	{ key: 'boards', title: 'Boards', load: () => import('./boards/Boards.svelte') },
	{ key: 'cloth', title: 'Cloth', load: () => import('./cloth/Cloth.svelte') },
	{ key: 'order', title: 'Order', load: () => import('./order/Order.svelte') },
	{ key: 'quote', title: 'Quote', load: () => import('./quote/Quote.svelte') },
	{ key: 'print', title: 'Print', load: () => import('./print/Print.svelte') },
] as const;

/** The chapter an address opens: '#boards', or '#build/boxes/0' with what of it. */
export function chapterOf(hash: string): Chapter {
	const [key] = hash.slice(1).split('/');
	return CHAPTERS.find((c) => c.key === key)?.key ?? 'build';
}
