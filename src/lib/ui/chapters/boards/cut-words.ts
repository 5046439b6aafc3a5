import { sameSetting, type Cut } from '../../../nest';
import { cutSetting, type CutSetting, type SheetAt, type Figures } from '../../../print';

/** What one cut is set to and gives, in the words of the printed cutting list. */
export interface CutWords extends CutSetting {
	/** True when the fence stands there already. */
	readonly same: boolean;
}

export function cutWords(
	at: SheetAt,
	cut: Cut,
	before: Cut | undefined,
	figures: Figures,
): CutWords {
	const same = before !== undefined && sameSetting(before, cut);
	return { ...cutSetting(at, cut, figures), same };
}
