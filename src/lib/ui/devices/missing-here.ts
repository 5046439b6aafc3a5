/** What this browser grants a page at this address, as far as it can be seen. */
export interface Granted {
	/** Is the page's address one that the browser takes for safe? */
	readonly isSecure: boolean;
	/** Is a copy of the planner kept for hours without the network? */
	readonly keepsCopy: boolean;
	readonly keepsAwake: boolean;
	readonly hasCamera: boolean;
}

/** What is granted to this page now. A copy may yet be on its way when it is asked early. */
export async function grantedHere(): Promise<Granted> {
	const workers = 'serviceWorker' in navigator ? navigator.serviceWorker : null;
	const kept = await workers?.getRegistration().catch(() => undefined);
	return {
		isSecure: isSecureContext,
		keepsCopy: kept !== undefined,
		keepsAwake: 'wakeLock' in navigator,
		hasCamera: 'mediaDevices' in navigator,
	};
}

/** What is missing on this device because of its address or its browser; empty for nothing. */
export function missingWords({ isSecure, keepsCopy, keepsAwake, hasCamera }: Granted): string {
	const missing = [
		...(keepsCopy
			? []
			: [
					'no copy of the planner is kept for hours without the network: leave this page open then',
				]),
		...(keepsAwake ? [] : ['the screen is not kept awake at the bench']),
		...(hasCamera
			? []
			: [
					'a page cannot use the camera: take photographs with the device itself and choose the file',
				]),
	];
	if (missing.length === 0) return '';
	const why = isSecure
		? keepsCopy
			? 'What this browser does not do'
			: 'This browser does not trust the certificate of this address, or grants a page little'
		: 'The address of this page is plain http, for which browsers grant a page little';
	return `${why}: ${missing.join('; ')}.`;
}
