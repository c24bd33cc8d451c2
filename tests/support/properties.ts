import fc from 'fast-check';

/** In CI every property meets the same cases, so that a change stands or falls by itself; elsewhere each run tries new ones. */
if (process.env.CI) fc.configureGlobal({ seed: 20_261_125 });
