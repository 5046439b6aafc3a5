import type { JobFile } from '../../job';

/**
 * The job as it was then. One that draws on the shop's rack leaves the rack and the shop as they
 * are now: they are other jobs' as well.
 */
export function goneBack(then: JobFile, now: JobFile, sharesRack: boolean): JobFile {
	if (!sharesRack) return then;
	const { stock: _stock, shop: _shop, ...own } = then;
	const { stock, shop } = now;
	return { ...own, ...(stock ? { stock } : {}), ...(shop ? { shop } : {}) };
}
