export type CautionPage =
	'summary' | 'sheets' | 'parts' | 'cloth' | 'box' | 'panel' | 'runs' | 'order';

/** A safety note that belongs to this plan. */
export interface Caution {
	readonly id: string;
	readonly title: string;
	readonly text: string;
	/** Published source, or 'common practice, no source'. */
	readonly source: string;
	/** The pages it is printed on. */
	readonly where: readonly CautionPage[];
	/**
	 * Parts, cuts or things it is about, for the page that shows them: 'part:B1', 'sheet:ply-18/0',
	 * 'box:bench'.
	 */
	readonly about: readonly string[];
}
