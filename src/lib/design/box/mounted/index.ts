export { drillBolts, sayBehindBolts } from './bolts';
export { cutHole, cutRadius } from './cut-out';
export { drillScrews } from './screws';
