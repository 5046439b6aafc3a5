export { layCloths } from './all-cloths';
export { blankChanged } from './as-pulled';
export { type Carpeting, chooseWays, type PricedWay } from './choose-ways';
export { pullBooking } from './pull-booking';
