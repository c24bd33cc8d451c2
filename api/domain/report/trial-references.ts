import type { MethodReference } from './references.ts';

/** The publications behind the analysis of trials. DOIs as elsewhere in this code; titles and volumes from memory. */
export const TRIAL_REFERENCES = {
  conditional: {
    key: 'Mehta and Patel 1995',
    text: 'Mehta C. R., Patel N. R. 1995. Exact logistic regression: theory and examples. Statistics in Medicine 14.',
    doi: '10.1002/sim.4780141908',
  },
  permutation: {
    key: 'Garthwaite 1996',
    text: 'Garthwaite P. H. 1996. Confidence intervals from randomization tests. Biometrics 52.',
    doi: '10.2307/2532852',
  },
  held: {
    key: 'Freedman and Lane 1983',
    text: 'Freedman D., Lane D. 1983. A nonstochastic interpretation of reported significance levels. Journal of Business & Economic Statistics 1.',
    doi: '10.1080/07350015.1983.10509354',
  },
  penalty: {
    key: 'Firth 1993',
    text: 'Firth D. 1993. Bias reduction of maximum likelihood estimates. Biometrika 80.',
    doi: '10.1093/biomet/80.1.27',
  },
  profile: {
    key: 'Heinze and Schemper 2002',
    text: 'Heinze G., Schemper M. 2002. A solution to the problem of separation in logistic regression. Statistics in Medicine 21.',
    doi: '10.1002/sim.1047',
  },
  ordinal: {
    key: 'McCullagh 1980',
    text: 'McCullagh P. 1980. Regression models for ordinal data. Journal of the Royal Statistical Society B 42.',
    doi: '10.1111/j.2517-6161.1980.tb01109.x',
  },
  chance: {
    key: 'Puhr et al. 2017',
    text: 'Puhr R., Heinze G., Nold M., Lusa L., Geroldinger A. 2017. Firth’s logistic regression with rare events: accurate effect estimates and predictions? Statistics in Medicine 36.',
    doi: '10.1002/sim.7273',
  },
} as const satisfies Record<string, MethodReference>;
