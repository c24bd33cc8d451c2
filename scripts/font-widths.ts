/** Writes api/figures/font-widths.generated.ts: `npx tsx scripts/font-widths.ts`. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';

const RANGES = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x218, 0x21b],
  [0x370, 0x3ff],
  [0x400, 0x45f],
  [0x1e00, 0x1eff],
  [0x2010, 0x2044],
  [0x2070, 0x209c],
  [0x2190, 0x2193],
  [0x2200, 0x2265],
] as const;
const FONTS = { regular: '400Regular', semibold: '600SemiBold' } as const;

/** Runs of code points the font has, each as `[first, widths in thousandths of an em]`. */
function runs(folder: string): [number, number[]][] {
  const path = `@expo-google-fonts/source-sans-3/${folder}/SourceSans3_${folder}.ttf`;
  const opened = fontkit.openSync(fileURLToPath(import.meta.resolve(path)));
  const font = 'fonts' in opened ? opened.fonts[0]! : opened;
  const out: [number, number[]][] = [];
  for (const [first, last] of RANGES)
    for (let code = first; code <= last; code++) {
      if (!font.hasGlyphForCodePoint(code)) continue;
      const width = Math.round((1000 * font.glyphForCodePoint(code).advanceWidth) / font.unitsPerEm);
      const run = out.at(-1);
      if (run !== undefined && run[0] + run[1].length === code) run[1].push(width);
      else out.push([code, [width]]);
    }
  return out;
}

const tables = Object.entries(FONTS).map(
  ([weight, folder]) => `  ${weight}: ${JSON.stringify(runs(folder))},`,
);
const text = `// Advance widths of Source Sans 3 (SIL Open Font License 1.1), thousandths of an em; made by scripts/font-widths.ts.
type Runs = readonly (readonly [number, readonly number[]])[];
export const FONT_WIDTHS: Readonly<Record<'regular' | 'semibold', Runs>> = {
${tables.join('\n')}
};
`;
writeFileSync(new URL('../api/figures/font-widths.generated.ts', import.meta.url), text);
