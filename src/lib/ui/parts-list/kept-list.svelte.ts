/*
 * A list that is not taken in yet, by the job it was brought to: it outlives a turn to another
 * chapter, so that nothing pasted or half mended is lost by looking elsewhere.
 */
const texts = $state<Record<string, string>>({});

export const kept = {
	of: (job: string): string => texts[job] ?? '',
	put: (job: string, text: string): void => {
		texts[job] = text;
	},
};
