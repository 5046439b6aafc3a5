import { type Block, paragraph, space } from '../page';

/** Some remarks under a table as one paragraph; nothing where there are none. */
export function sentence(says: readonly string[], width: number): Block[] {
	const text = says
		.filter((t) => t !== '')
		.map((t) => t.charAt(0).toUpperCase() + t.slice(1).replace(/\.$/, ''))
		.join('. ');
	return text === '' ? [] : [space(1.2), paragraph(`${text}.`, width, { size: 3.2 })];
}
