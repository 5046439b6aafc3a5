export { drillBolts, sayBehindBolts } from './bolts';
export { cutFor, type Framed, framedName, type Seated } from './framed';
export { drillScrews } from './screws';
