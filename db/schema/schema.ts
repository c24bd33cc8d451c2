export { analysis, type StoredValue } from './analysis.ts';
export { columnChoice, dataImport } from './import.ts';
export { analyte, technique } from './lookups.ts';
export { placement } from './placement.ts';
export { specimen } from './specimen.ts';
export { study } from './study.ts';
export { visibleAnalysis, visibleSpecimen, visibleWareGroup } from './visible.ts';
export { wareGroup } from './ware-group.ts';
