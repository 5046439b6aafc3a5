import type { Job } from '../job';
import { doubt, type Fault } from './fault';

/** Figures of a quote that was sent stay as they are: here they are only added up. */
export function oddSent({ sent }: Job): Fault[] {
	return sent.flatMap(({ date, lines, net, tax, total }, i): Fault[] => {
		const sum = lines.reduce((all, line) => all + line.price, 0);
		if (sum === net && net + tax === total) return [];
		const what = `The figures of the quote sent on ${date} do not add up.`;
		return [doubt(['sent', i], what, 'Take it out, and send the quote anew.')];
	});
}
