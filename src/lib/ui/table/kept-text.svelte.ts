/*
 * A table that is not taken in yet, by what it was brought for: it outlives a turn to another
 * page, so that nothing pasted or half mended is lost by looking elsewhere.
 */
const texts = $state<Record<string, string>>({});

export const keptTexts = {
	of: (what: string): string => texts[what] ?? '',
	put: (what: string, text: string): void => {
		texts[what] = text;
	},
};
