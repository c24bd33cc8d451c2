import { type Fire, fireContent, type Level, massPerAtom } from './fire.ts';
import { dryMass } from './line.ts';
import { sulfideSulfur } from './sulfur.ts';
import type { BatchLine, Span } from './types.ts';

/** Grams of sulfur brought in, of it as sulfide, of SO3 kept (surviving sulfide counts as SO3), and of SO2 given off. */
export interface SulfurAccount {
  readonly brought: Span & { readonly central: number };
  readonly sulfide: Span & { readonly central: number };
  readonly kept: Span & { readonly central: number };
  readonly dioxide: Span & { readonly central: number };
}

/**
 * Where the sulfur of a batch goes (grams): brought in, of it as sulfide, kept as SO3, given off as SO2, all over
 * the range that the fire and the materials leave open.
 * @example
 * sulfurAccount([{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 100 }], fireAt({ celsius: 1000 })).dioxide.high // 26.7731
 */
export function sulfurAccount(batch: readonly BatchLine[], fire: Fire): SulfurAccount {
  const grams = (of: (line: BatchLine) => number) =>
    batch.reduce((sum, line) => sum + of(line) * dryMass(line), 0);
  const at = (level: Level, end: 'low' | 'high' | null) => {
    const content = ({ material }: BatchLine) =>
      end && material.spread ? material.spread[end] : material.content;
    const kept = grams((line) => (fireContent(content(line), fire, level).kept.S ?? 0) * massPerAtom('SO3'));
    const dioxide = grams((line) => fireContent(content(line), fire, level).gases.SO2);
    const sulfide = grams((line) => sulfideSulfur(content(line)) * massPerAtom('S'));
    const brought = grams((line) => (content(line).moles.S ?? 0) * massPerAtom('S'));
    return { brought, kept, dioxide, sulfide };
  };
  const central = at('central', null);
  const all = [central, at('low', 'low'), at('low', 'high'), at('high', 'low'), at('high', 'high')];
  const span = (pick: (v: typeof central) => number) => {
    const seen = all.map(pick);
    return { low: Math.min(...seen), central: seen[0]!, high: Math.max(...seen) };
  };
  return {
    brought: span((v) => v.brought),
    sulfide: span((v) => v.sulfide),
    kept: span((v) => v.kept),
    dioxide: span((v) => v.dioxide),
  };
}
