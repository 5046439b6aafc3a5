/** The scripts the page came with. */
export function partsOfPage(page: Document): string[] {
	const links = page.querySelectorAll<HTMLLinkElement>('link[rel="modulepreload"]');
	return [...links].map(({ href }) => new URL(href).pathname);
}
