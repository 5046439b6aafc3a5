export { unbooked, unpricedBookings } from './unbooked';
export { contentOf, sundryLeft, typedPacksLeft, withoutUsed } from './sundries-left';
