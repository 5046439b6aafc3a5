export { materialsOf, MINUTES_OF, timesOf } from './against';
export { type OwnTime, ownTimes } from './own-times';
export { countedUses, sundryBooking, type SundryUse } from './sundry-booking';
export { minutesNow, takeOwnTime } from './take-time';
