import type { Page } from '@playwright/test';
import { until } from '../../browser';
import { type Moment, toPage, type Work } from './moment';
import { OWNED } from './old-shop';

const MARK = 'Mark sheet as cut';
/** Longest wait between a booking and its undo, ms. */
const BREATH = 600;
/** A button that stands is pressed in that time on any machine, ms. */
const SOON = 3000;

/**
 * The one sheet of a job is booked as cut and the booking taken back, over and over: whenever the
 * kill comes, the job and the rack say the same of it afterwards.
 */
export class Booking implements Moment {
	readonly name = 'books a sheet';
	booked = 0;
	/** Goes after which the sheet was found booked. */
	stood = 0;

	async work({ page, address, dice, begins }: Work): Promise<void> {
		await toPage(page, `${address}#boards`);
		await until(page, `${IS_CUT} || ${IS_FREE}`);
		const { goesOn } = begins();
		while (goesOn()) {
			const free = await page.evaluate<boolean>(IS_FREE);
			if (!free) await page.keyboard.press('Control+z');
			else if (await clicks(page)) this.booked++;
			await page.waitForTimeout(dice.int(BREATH));
		}
	}

	async wrong(page: Page, address: string): Promise<string | null> {
		await toPage(page, `${address}#boards`);
		await until(page, `${IS_CUT} || ${IS_FREE}`);
		const isCut = await page.evaluate<boolean>(IS_CUT);
		if (isCut) this.stood++;
		await toPage(page, `${address}rack`);
		await until(page, `document.querySelector('${OWNED_FIELD}') !== null`);
		const left = Number(await page.inputValue(OWNED_FIELD));
		const right = OWNED - (isCut ? 1 : 0);
		if (left === right) return null;
		return `the sheet is ${isCut ? '' : 'not '}cut in the job; the rack has ${left} of ${OWNED}`;
	}
}

/** False where the plan of the click before has come meanwhile, and with it the button went. */
const clicks = (page: Page): Promise<boolean> =>
	page
		.getByRole('button', { name: MARK })
		.first()
		.click({ timeout: SOON })
		.then(
			() => true,
			() => false,
		);

const OWNED_FIELD = '[data-at="stock/sheets/0/owned"] input';
const IS_CUT = `document.body.textContent.includes('Cut. Its offcuts are on the rack.')`;
const IS_FREE = `[...document.querySelectorAll('button')].some((b) => b.textContent.trim() === '${MARK}')`;
