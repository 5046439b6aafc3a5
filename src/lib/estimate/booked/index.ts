export { unbooked, unpricedBookings } from './unbooked';
