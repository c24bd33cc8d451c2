import type { ComparedAnalysis, ComparisonData } from '../contract/comparison-data.ts';
import type { ComparisonSource } from '../contract/figure.ts';
import { TECHNIQUES } from './techniques.ts';

/** Whose figures a comparison rests on: each ware group's source, then each way the analyses were made. */
export function sourcesOf({ groups, specimens, analyses }: ComparisonData): ComparisonSource[] {
  const ofGroups = groups.map(({ id, name, source, doi }) => ({
    ...{ kind: 'ware group' as const, name, source, doi },
    n: specimens.filter(({ kind, group }) => kind === 'sherd' && group === id).length,
  }));
  const ways = new Map<string, ComparisonSource>();
  for (const analysis of analyses) {
    const { source, doi } = analysis;
    const name = wayOf(analysis);
    const key = JSON.stringify([name, source, doi]);
    const { n } = ways.get(key) ?? { n: 0 };
    ways.set(key, { kind: 'analyses', name, source, doi, n: n + 1 });
  }
  return [...ofGroups, ...ways.values()];
}

const NAMES = new Map(TECHNIQUES.map(({ code, name }) => [code, name]));

function wayOf({ technique, laboratory, instrument }: ComparedAnalysis): string {
  const name = technique === null ? 'technique not stated' : (NAMES.get(technique) ?? technique);
  return [name, instrument, laboratory].filter((text) => text !== '').join(', ');
}
