import type { BoxPlan } from '../../design';
import type { Plan } from '../../plan';
import type { Drawing } from '../drawing';
import { partDrawings } from '../parts';

/** Every board of one box as it is worked, face by face. */
export function boardDrawings({ job }: Plan, box: BoxPlan): Drawing[] {
	return partDrawings(job, box.parts, { boxes: [box], panels: [] });
}
