import type { Page } from '@playwright/test';
import { type Moment, PATIENCE, toPage, type Work } from './moment';

/** Texts of the job that are typed into, one in each window. */
const FIELDS = ['customer', 'vehicle'] as const;
type Field = (typeof FIELDS)[number];

const fieldAt = (at: Field): string => `[data-at="${at}"] :is(input, textarea)`;

/** Somebody types number after number into one text, or into another in a second window as well. */
export class Typing implements Moment {
	readonly name: string;
	readonly #fields: readonly Field[];
	/** The number typed last, and the last that was said to be kept, of each text. */
	readonly #typed = new Map<Field, number>();
	readonly #kept = new Map<Field, number>();
	/** What each text held before: it stands as long as nothing typed was said to be kept. */
	readonly #before = new Map<Field, number>();
	/** Goes in which some number was said to be kept before the kill. */
	said = 0;

	constructor(name: string, windows: number) {
		this.name = name;
		this.#fields = FIELDS.slice(0, windows);
	}

	get typed(): number {
		return [...this.#typed.values()].reduce((sum, n) => sum + n, 0);
	}

	async work({ page, address, dice, begins }: Work): Promise<void> {
		const before = [...this.#kept.values()].join();
		const windows: [Field, Page][] = [];
		for (const field of this.#fields) {
			const window = windows.length === 0 ? page : await page.context().newPage();
			await window.exposeFunction('told', (value: string) =>
				this.#kept.set(field, Number(value) || 0),
			);
			await toForm(window, address);
			this.#before.set(field, await numberIn(window, field));
			await window.evaluate(watchKept, fieldAt(field));
			windows.push([field, window]);
		}
		const { goesOn } = begins();
		await Promise.all(
			windows.map(async ([field, window]) => {
				while (goesOn()) {
					const n = (this.#typed.get(field) ?? 0) + 1;
					await window.fill(fieldAt(field), String(n), { timeout: PATIENCE });
					this.#typed.set(field, n);
					await window.waitForTimeout(dice.int(400));
				}
			}),
		);
		if (before !== [...this.#kept.values()].join()) this.said++;
	}

	async wrong(page: Page, address: string): Promise<string | null> {
		await toForm(page, address);
		for (const field of this.#fields) {
			const stands = await numberIn(page, field);
			const kept = this.#kept.get(field) ?? 0;
			if (kept === 0 && stands === this.#before.get(field)) continue;
			const typed = (this.#typed.get(field) ?? 0) + 1;
			if (stands < kept) return `${field}: ${kept} was said to be kept, ${stands} stands`;
			if (stands > typed) return `${field}: ${stands} stands and was never typed`;
		}
		return null;
	}
}

const numberIn = async (page: Page, field: Field): Promise<number> =>
	Number(await page.inputValue(fieldAt(field))) || 0;

async function toForm(page: Page, address: string): Promise<void> {
	await toPage(page, `${address}#build/about`);
	await page.waitForSelector(fieldAt('customer'), { state: 'attached', timeout: PATIENCE });
	await page.evaluate(() => {
		for (const folded of document.querySelectorAll('details')) folded.open = true;
	});
}

/**
 * Runs in the page: tells what stands in the field whenever the page comes to say that it is kept.
 */
function watchKept(field: string): void {
	const says = (): string =>
		[...document.querySelectorAll('[role=status]')].map((e) => e.textContent ?? '').join(' ');
	let before = true;
	new MutationObserver(() => {
		const isKept = /\bkept in this browser/.test(says());
		const value = document.querySelector<HTMLInputElement>(field)?.value ?? '';
		if (isKept && !before) (window as unknown as { told(value: string): void }).told(value);
		before = isKept;
	}).observe(document.body, { subtree: true, childList: true, characterData: true });
}
