import fc from 'fast-check';

// Loaded after tests/depth.ts: laws draw the same cases with every mutant.
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 1 });
