import { eq, getTableColumns, isNull, or } from 'drizzle-orm';
import { pgView } from 'drizzle-orm/pg-core';
import { analysis } from './analysis.ts';
import { dataImport } from './import.ts';
import { specimen } from './specimen.ts';
import { wareGroup } from './ware-group.ts';

/** What readers see: rows entered by hand, and rows of imports that are done. Services read these, never the tables. */
const published = or(isNull(dataImport.id), eq(dataImport.status, 'done'));

export const visibleAnalysis = pgView('visible_analysis').as((query) =>
  query
    .select(getTableColumns(analysis))
    .from(analysis)
    .leftJoin(dataImport, eq(dataImport.id, analysis.importId))
    .where(published),
);
export const visibleSpecimen = pgView('visible_specimen').as((query) =>
  query
    .select(getTableColumns(specimen))
    .from(specimen)
    .leftJoin(dataImport, eq(dataImport.id, specimen.importId))
    .where(published),
);
export const visibleWareGroup = pgView('visible_ware_group').as((query) =>
  query
    .select(getTableColumns(wareGroup))
    .from(wareGroup)
    .leftJoin(dataImport, eq(dataImport.id, wareGroup.importId))
    .where(published),
);
