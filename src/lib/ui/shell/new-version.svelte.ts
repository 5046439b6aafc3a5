/** Least time between two looks for a new version, milliseconds. */
const HOUR = 3_600_000;
/** So long after a page opened, the one it was loaded in place of is gone, milliseconds. */
const SETTLED = 5000;

/** A newer version of the planner, fetched whole and waiting: said, never forced. */
export class NewVersion {
	isHere = $state(false);
	/** It was asked for while other windows use the version before. */
	isHeld = $state(false);
	#registration: ServiceWorkerRegistration | null = null;
	#looked: number;
	readonly #workers: ServiceWorkerContainer | undefined;
	readonly #reload: () => void;

	/**
	 * @param workers none where the browser gives none
	 * @param now milliseconds since 1970
	 */
	constructor(
		workers: ServiceWorkerContainer | undefined = globalThis.navigator?.serviceWorker,
		reload = (): void => location.reload(),
		now = Date.now(),
	) {
		this.#workers = workers;
		this.#reload = reload;
		this.#looked = now;
	}

	/** @param parts addresses on this host of the files the page is made of */
	async watch(parts: readonly string[]): Promise<void> {
		if (!this.#workers) return;
		const registration = await this.#workers.ready;
		this.#registration = registration;
		const tell = (): void => registration.active?.postMessage({ kind: 'opened', parts });
		tell();
		setTimeout(tell, SETTLED);
		registration.addEventListener('updatefound', () => {
			registration.installing?.addEventListener('statechange', () => this.#look(registration));
		});
		this.#look(registration);
	}

	/** A page that stays open for days looks by itself. */
	lookAgain(now = Date.now()): void {
		if (!this.#registration || now - this.#looked < HOUR) return;
		this.#looked = now;
		// Without a network there is no news.
		this.#registration.update().catch(() => undefined);
	}

	/** Takes the new version and loads the page anew, unless other windows use the one before. */
	async take(): Promise<void> {
		const waiting = this.#registration?.waiting;
		if (!waiting) return;
		const { port1, port2 } = new MessageChannel();
		const answer = new Promise<boolean>((resolve) => {
			port1.onmessage = ({ data }) => resolve(data === true);
		});
		const comes = new Promise((resolve) => {
			this.#workers?.addEventListener('controllerchange', resolve, { once: true });
		});
		waiting.postMessage({ kind: 'take over' }, [port2]);
		this.isHeld = !(await answer);
		port1.close();
		if (this.isHeld) return;
		await comes;
		this.#reload();
	}

	#look({ waiting, active }: ServiceWorkerRegistration): void {
		this.isHere = waiting !== null && active !== null;
	}
}
