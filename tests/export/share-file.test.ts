import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { ShareFile } from '../../api/contract/shared.ts';
import { writeShareFile } from '../../api/export/share-file.ts';

const hostile = '</script><script>alert(1)</script><!--</title><img src=x onerror=alert(2)>&"\'\u2028';
const content = {
  shared: { kind: 'placement', placement: { name: hostile, note: hostile } },
  tables: { [hostile]: hostile },
} as unknown as ShareFile;
const built = { script: 'const end = "</script>", hidden = "<!--";', style: 'a::after{content:"</style>"}' };
const file = writeShareFile(content, built);
const [, data] = /<script type="application\/json" id="frozen">(.*?)<\/script>/s.exec(file)!;
const [, code] = /<script>(.*?)<\/script>/s.exec(file)!;

describe('a share as one file', () => {
  it('holds hostile names as data and nowhere as markup', () => {
    expect(JSON.parse(data!)).toEqual(content);
    expect(file.match(/<\/?script/g)).toHaveLength(4);
    expect(file.match(/<\/?title/g)).toHaveLength(2);
    expect(file.match(/<\/?style/g)).toHaveLength(2);
    expect(file).not.toMatch(/<img|<!--/);
  });
  it('lets its own script run, known by its digest, and no other, and asks nothing of any network', () => {
    const [, policy] = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(file)!;
    const digest = createHash('sha256').update(code!).digest('base64');
    expect(policy).toContain(`script-src 'sha256-${digest}';`);
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/https?:|\*|unsafe-eval|connect-src/);
  });
  it('leaves its script the program it was', () => {
    const read = (text: string) => new Function(`${text}; return [end, hidden];`)();
    expect(read(code!)).toEqual(read(built.script));
  });
});
