export { drillBolts, sayBehindBolts } from './bolts';
export { drillScrews } from './screws';
