import { RequirementError } from '../../domain/requirement.ts';
import { foreignName } from '../sniff.ts';

const WANTED = 'a log needs text: rows of times and temperatures, as CSV';

/** Refuses, by their first bytes, files that are no text, naming what they are. */
export function refuseForeign(head: Uint8Array): void {
  const foreign = foreignName(head);
  if (foreign) throw new RequirementError(`${WANTED}; this file is ${foreign}`);
  if (head[0] === 0x50 && head[1] === 0x4b && (head[2] ?? 0) <= 0x08)
    throw new RequirementError(`${WANTED}; this file is a workbook or a ZIP archive: save the log as CSV`);
}
