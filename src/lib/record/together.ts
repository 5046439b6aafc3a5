import type { JobShare, JoinedBoards, JoinedCloth, Tally, Together } from '../estimate';
import { z } from '../job';
import type { MoneyField } from './amounts';
import { fieldsOf, howMany, inMm2, listOf, millimetres, oneOf, pure, saying } from './units';

const joined = {
	id: saying('mark of the board or cloth'),
	name: saying('name'),
	jobs: listOf(z.string(), 'tags of the jobs that take it'),
	way: oneOf(
		['together', 'apart', 'alone'],
		'one layout for all; a layout each, for one was no cheaper; for one job',
	),
};

const tally = (amount: MoneyField) =>
	fieldsOf<Tally>()({
		sheets: howMany('sheets and offcuts to be cut'),
		bought: howMany('sheets ordered'),
		pull: millimetres('cloth pulled'),
		ordered: amount('what is ordered'),
		fromRack: amount('what comes off the rack, at list price'),
		minutes: pure('minutes of work'),
		labour: amount('of that work'),
	});

/** Of a plan of several jobs. */
export const togetherFields = (amount: MoneyField) =>
	fieldsOf<Together>()({
		jobs: listOf(
			fieldsOf<JobShare>()({
				tag: saying('what its marks begin with'),
				number: saying('number'),
				name: saying('name'),
				customer: saying('customer'),
				vehicle: saying('vehicle'),
				boardArea: inMm2('its pieces of board that are still to be cut'),
				clothArea: inMm2('its blanks of cloth'),
				ordered: amount('its share of what is ordered'),
				fromRack: amount('its share of what comes off the rack'),
				labour: amount('its share of the labour'),
			}),
			'the jobs; the shares of all add up to what is ordered, off the rack and labour',
		),
		boards: listOf(
			fieldsOf<JoinedBoards>()({
				...joined,
				sheets: howMany('sheets and offcuts taken'),
				apart: howMany('the same, job by job'),
			}),
			'boards',
		),
		cloths: listOf(
			fieldsOf<JoinedCloth>()({
				...joined,
				pull: millimetres('length pulled'),
				apart: millimetres('the same, job by job'),
			}),
			'cloths',
		),
		now: tally(amount).describe('planned in one go'),
		apart: tally(amount).describe('job after job, each with what the one before left on the rack'),
	}).describe('the jobs it is the plan of, where these are several');
