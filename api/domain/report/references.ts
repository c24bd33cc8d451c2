/** A published method, as it is cited and as it is listed. */
export interface MethodReference {
  readonly key: string;
  readonly text: string;
  readonly doi: string;
}

/** The publications behind the methods. DOIs as elsewhere in this code; titles, journals and volumes from memory. */
export const METHOD_REFERENCES = {
  atomicWeights: {
    key: 'Prohaska et al. 2022',
    text: 'Prohaska T. et al. 2022. Standard atomic weights of the elements 2021 (IUPAC Technical Report). Pure and Applied Chemistry 94.',
    doi: '10.1515/pac-2019-0603',
  },
  replacement: {
    key: 'Martín-Fernández et al. 2003',
    text: 'Martín-Fernández J. A., Barceló-Vidal C., Pawlowsky-Glahn V. 2003. Dealing with zeros and missing values in compositional data sets using nonparametric imputation. Mathematical Geology 35.',
    doi: '10.1023/A:1023866030544',
  },
  logRatio: {
    key: 'Aitchison 1986',
    text: 'Aitchison J. 1986. The Statistical Analysis of Compositional Data. Chapman and Hall.',
    doi: '10.1007/978-94-009-4109-0',
  },
  ledoitWolf: {
    key: 'Ledoit and Wolf 2004',
    text: 'Ledoit O., Wolf M. 2004. A well-conditioned estimator for large-dimensional covariance matrices. Journal of Multivariate Analysis 88.',
    doi: '10.1016/S0047-259X(03)00096-4',
  },
  oas: {
    key: 'Chen et al. 2010',
    text: 'Chen Y., Wiesel A., Eldar Y. C., Hero A. O. 2010. Shrinkage algorithms for MMSE covariance estimation. IEEE Transactions on Signal Processing 58.',
    doi: '10.1109/TSP.2010.2053029',
  },
  hotelling: {
    key: 'Hotelling 1931',
    text: 'Hotelling H. 1931. The generalization of Student’s ratio. Annals of Mathematical Statistics 2.',
    doi: '10.1214/aoms/1177732979',
  },
} as const satisfies Record<string, MethodReference>;
