import { expect, type Locator, type Page } from '@playwright/test';

/*
 * A newcomer at a task, by pointer or by the keyboard alone. What it takes is counted and printed:
 * a click or a press that chooses or goes somewhere, a choice from a list, a field that is filled.
 */
export class Newcomer {
	clicks = 0;
	choices = 0;
	fields = 0;

	constructor(
		readonly page: Page,
		readonly by: 'pointer' | 'keyboard',
	) {}

	/** Clicks it, or gets there with Tab and presses Enter or Space. */
	async press(what: Locator): Promise<void> {
		this.clicks++;
		await what.scrollIntoViewIfNeeded();
		if (this.by === 'pointer') return what.click();
		await this.reach(what);
		await this.page.keyboard.press('Enter');
	}

	async fill(what: Locator, text: string): Promise<void> {
		this.fields++;
		if (this.by === 'pointer') return what.fill(text);
		await this.reach(what);
		await this.page.keyboard.press('Control+A');
		await this.page.keyboard.type(text);
	}

	async choose(what: Locator, label: string): Promise<void> {
		this.choices++;
		if (this.by === 'pointer') return void (await what.selectOption({ label }));
		await this.reach(what);
		await this.page.keyboard.type(label);
	}

	/** With Tab, from where the keyboard is: at most once round the page. */
	async reach(what: Locator): Promise<void> {
		await expect(what).toBeVisible();
		const isThere = (): Promise<boolean> => what.evaluate((e) => e === document.activeElement);
		for (let n = 0; n < 200; n++) {
			if (await isThere()) return;
			await this.page.keyboard.press('Tab');
		}
		throw new Error('The keyboard does not get there.');
	}

	tell(task: string): void {
		const { width } = this.page.viewportSize()!;
		console.log(
			`${task}, ${this.by}, ${width} wide: ${this.clicks} clicks, ${this.choices} choices, ${this.fields} fields`,
		);
	}
}
