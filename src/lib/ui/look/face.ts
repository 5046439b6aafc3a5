import regular from '@expo-google-fonts/ibm-plex-sans-condensed/400Regular/IBMPlexSansCondensed_400Regular.ttf?url';
import semibold from '@expo-google-fonts/ibm-plex-sans-condensed/600SemiBold/IBMPlexSansCondensed_600SemiBold.ttf?url';
import fallback from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';

/**
 * Where the faces lie. Named here, on the page, and not in the worker: the service worker's list of
 * files leaves out assets that only a worker names, and printing without a network would fail.
 */
export const FACES = { regular, semibold, fallback } as const;

const WEIGHTS = [
	[FACES.regular, '400'],
	[FACES.semibold, '600'],
] as const;

/**
 * Sets the screen in the face that is printed; the text is readable in another face until it has
 * come.
 */
export function useFace(document: Document): void {
	for (const [url, weight] of WEIGHTS) {
		const face = new FontFace('IBM Plex Sans Condensed', `url("${url}") format("truetype")`, {
			weight,
			display: 'swap',
		});
		document.fonts.add(face);
		// A face that does not come costs nothing but looks: the next one in the list is used.
		face.load().catch(() => undefined);
	}
}
