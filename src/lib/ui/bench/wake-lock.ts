/**
 * Keeps the screen awake while the bench view is open. Browsers drop the lock when the page is
 * hidden, so it is asked for again when it comes back; where there is no such lock, the screen
 * sleeps as it always does.
 */
export function keepAwake(): () => void {
	let lock: WakeLockSentinel | null = null;
	let over = false;
	const ask = async (): Promise<void> => {
		if (over || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
		try {
			lock = await navigator.wakeLock.request('screen');
			if (over) await lock.release();
		} catch {
			// A low battery may refuse it; the bench works all the same.
		}
	};
	const seen = (): void => void ask();
	document.addEventListener('visibilitychange', seen);
	void ask();
	return () => {
		over = true;
		document.removeEventListener('visibilitychange', seen);
		void lock?.release();
	};
}
