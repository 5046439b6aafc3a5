export { layCloths } from './all-cloths';
export { type Carpeting, chooseWays, type PricedWay } from './choose-ways';
export { pullBooking } from './pull-booking';
