import type { OptionPrice, Order, Quote } from '../estimate';
import { z } from '../job';
import { majorMoney } from '../measure';
import { fieldsOf, howMany, inPercent, listOf, oneOf, pure, saying } from './units';

/** An amount of money of the job, written in the currency itself. */
export type MoneyField = ReturnType<typeof amountsIn>;

export const amountsIn = (currency: string) => (what: string) =>
	z
		.number()
		.transform((minor) => majorMoney(minor, currency) + 0)
		.pipe(z.number())
		.describe(`in the currency of the job: ${what}`);

const quantity = (what: string) =>
	z
		.strictObject({
			number: pure('how much'),
			unit: oneOf(['sheets', 'offcuts', 'm', 'm2', 'L', 'pieces', 'packs'], 'counted in'),
		})
		.describe(what);

const orderLine = (amount: MoneyField) =>
	fieldsOf<Order['lines'][number]>()({
		group: oneOf(['sheets', 'cloth', 'sundries'], 'what kind of thing'),
		id: saying('of the rack'),
		what: saying('name'),
		code: saying("supplier's code"),
		supplier: saying('mark of who sells it; empty for anybody'),
		priced: saying('the day its price was given; empty when nobody knows'),
		need: quantity('the work takes, spare not counted'),
		rack: quantity('on the rack'),
		fromRack: quantity('of that used'),
		buy: howMany('units to buy'),
		more: oneOf(
			['', 'least', 'multiple', 'break'],
			'why more than is needed: the least sold, the multiple sold by, cheaper in all',
		),
		unit: saying('sheet, step or pack'),
		pack: pure('in one unit: mm of a step; of a pack, in the unit of need; 1 for sheets'),
		each: amount('one unit'),
		total: amount('buy times each'),
		spare: quantity('bought and not used'),
		sparePercent: inPercent('asked for on top of the need'),
		kind: saying('kind of sundry').optional(),
		for: listOf(z.string(), 'what it is for'),
	});

export const orderFields = (amount: MoneyField) =>
	z.strictObject({
		lines: listOf(orderLine(amount), 'what to buy'),
		suppliers: listOf(
			fieldsOf<Order['suppliers'][number]>()({
				id: saying('mark; empty for what anybody sells'),
				name: saying('name'),
				total: amount('bought from them'),
				least: amount('they send no order that comes to less'),
			}),
			'who it is bought from; their totals add up to that of the order',
		),
		total: amount('of all lines'),
	});

const labourLines = (amount: MoneyField) =>
	listOf(
		fieldsOf<Quote['labour'][number]>()({
			what: saying('work'),
			amount: pure('how much, in its unit'),
			unit: saying('unit'),
			minutes: pure('minutes'),
			cost: amount('of this work'),
		}),
		'work counted, then hours typed',
	);

export const quoteFields = (amount: MoneyField) =>
	fieldsOf<Quote>()({
		bought: amount('whole sheets, steps and packs, those that are booked already among them'),
		fromRack: amount('owned sheets, cloth and packs at list price'),
		used: amount('the share of both that is in the work'),
		credit: amount('offcuts credited'),
		labour: labourLines(amount),
		labourCost: amount('of all labour'),
		overhead: amount('on labour'),
		cost: amount('bought + fromRack - credit + labourCost + overhead'),
		materialMarkup: amount('on bought + fromRack - credit'),
		profit: amount('on cost'),
		markup: inPercent('markup on material and profit, of cost'),
		margin: inPercent('the same, of net'),
		net: amount('cost + materialMarkup + profit'),
		taxed: amount('part of net that tax is due on'),
		tax: amount('tax'),
		total: amount('net + tax'),
		booked: amount('of bought and fromRack, what is cut, pulled or used already'),
		left: fieldsOf<Quote['left']>()({
			bought: amount('total of the order'),
			fromRack: amount('still on the rack'),
			labour: labourLines(amount),
			labourCost: amount('of that labour'),
		}).describe('how much of it is still to come: what is cut, pulled and used is no part of it'),
		spoil: fieldsOf<Quote['spoil']>()({
			pieces: howMany('parts and blanks spoiled so far'),
			lost: amount('worth of what was spoiled, at list price; in no sum'),
			material: amount('bought and off the rack because of it'),
			labour: amount('the same of labour'),
			overhead: amount('on that labour'),
			cost: amount('material + labour + overhead; in no other figure of the quote'),
		}).describe('what spoiled pieces cost the shop, beside the quote'),
		lines: listOf(
			z.strictObject({ what: saying('what the customer gets'), price: amount('before tax') }),
			'add up to net',
		),
	});

export const optionFields = (amount: MoneyField, problem: z.ZodType) =>
	fieldsOf<OptionPrice>()({
		id: saying('mark'),
		name: saying('name'),
		note: saying('note'),
		net: amount('of the job with it, before tax'),
		total: amount('of the job with it'),
		difference: amount('total with it less total without'),
		bought: amount('the same of what is bought'),
		problems: listOf(problem, 'what is wrong with it and not without'),
		offered: z.boolean().describe('can it be planned: one that cannot is not on the quote'),
	});
