import type { JobFile } from '../../../job';
import { majorMoney, type Money } from '../../../measure';
import type { Plan } from '../../../plan';
import { quoteNow } from '../../../print';

type Sent = NonNullable<JobFile['sent']>[number];

/** The job with its quote kept as it is sent on this day. */
export function withSent(file: JobFile, plan: Plan, date: string): JobFile {
	const now = quoteNow(plan);
	const major = (amount: Money): number => majorMoney(amount, plan.job.shop.currency);
	const sent: Sent = {
		date,
		lines: now.lines.map(({ what, price }) => ({ what, price: major(price) })),
		...{ net: major(now.net), taxPercent: now.taxPercent, taxed: major(now.taxed) },
		...{ tax: major(now.tax), total: major(now.total) },
		options: now.options.map(({ name, note, total }) => ({ name, note, total: major(total) })),
	};
	return { ...replaced(file), sent: [...(replaced(file).sent ?? []), sent] };
}

/** The job with the quote that was sent last no longer in force. */
export function replaced(file: JobFile): JobFile {
	return { ...file, sent: (file.sent ?? []).map((sent) => ({ ...sent, replaced: true })) };
}
