export { drillBolts, sayBehindBolts } from './bolts';
export { cutHole, cutRadius } from './cut-out';
export { cutFor, type Framed, framedName, type Seated } from './framed';
export { drillScrews } from './screws';
