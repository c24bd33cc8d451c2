import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Comparison } from '../../api/contract/placement.ts';
import { expectClose } from '../support/close.ts';
import { GROUP_OF, GROUPS, IDS, OXIDES, R_SAYS } from '../support/romano-british.ts';
import { startApi } from '../support/start-api.ts';

/**
 * 45 Romano-British sherds from a laboratory's CSV over HTTP to placement, against R 4.2.2. Data: Tubb, Parker &
 * Nickless 1980, Archaeometry 22:153–171, as carried by the R package HSAUR3; tests/fixtures/hsaur3/README.md.
 */
const used = startApi();
const CSV = readFileSync(new URL('../fixtures/hsaur3/hsaur3_pottery.csv', import.meta.url), 'utf8');
let study: string;
let groupIds: string[];
let specimenIds: string[];

beforeAll(async () => {
  const { api } = used;
  study = await api.newStudy('Romano-British');
  const file = { name: 'hsaur3_pottery.csv', content: CSV };
  const done = await api.bringIn(study, { file, choices: { defaults: { measured: 'whole' } } });
  expect(done).toMatchObject({ status: 'done', analyses: 45, specimens: 45, groups: 5 });
  const { rows } = (await api.get(`/api/studies/${study}/specimens`)).body;
  const idOf = new Map(rows.map((row: { label: string; id: string }) => [row.label, row.id]));
  specimenIds = IDS.map((label) => idOf.get(label) as string);
  groupIds = [];
  // R's groups put kilns 2 and 3, 4 and 5 together.
  for (const name of GROUPS) {
    const made = await api.post(`/api/studies/${study}/groups`, { name });
    groupIds.push(made.body.id);
    const specimens = specimenIds.filter((_, i) => GROUP_OF[i] === name);
    await api.post(`/api/studies/${study}/specimens/change`, { specimens, change: { group: made.body.id } });
  }
});

async function compare(settings: object): Promise<Comparison> {
  const answer = await used.api.post(`/api/studies/${study}/comparison`, {
    settings: { groups: groupIds, ...settings },
    measured: 'whole',
    replicas: specimenIds,
  });
  expect(answer.status).toBe(200);
  return answer.body;
}

describe('published sherds taken from CSV to placement', () => {
  it('enter whole: every oxide, every sherd', async () => {
    const { model, placements, excluded, groups } = await compare({ covariance: { kind: 'sample' } });
    expect(new Set(model.parts)).toEqual(new Set(OXIDES));
    expect(placements).toHaveLength(45);
    expect(excluded).toEqual([]);
    expect(groups.map((group) => [group.specimens, group.used])).toEqual([
      [21, 21],
      [14, 14],
      [10, 10],
    ]);
  });

  it('give R’s principal components of the centred log-ratios', async () => {
    const { model } = await compare({});
    const { eigenvalues, percentVariance, loadings } = R_SAYS.prcomp_clr_cov.value;
    for (let k = 0; k < 4; k++) {
      expectClose(model.pca.eigenvalues[k]!, eigenvalues[k]);
      expectClose(100 * model.pca.explained[k]!, percentVariance[k]);
      OXIDES.forEach((oxide, part) => {
        const own = model.pca.loadings[k]![model.parts.indexOf(oxide)]!;
        expectClose(own, loadings[part][k]);
      });
    }
  });

  it.each([
    ['ilr', { kind: 'sample' }, R_SAYS.mahalanobis_ilr.value],
    ['three components', { kind: 'components', count: 3 }, R_SAYS.mahalanobis_pc3.value],
  ] as const)(
    'give R’s Mahalanobis distances and membership probabilities in %s',
    async (_, covariance, wanted) => {
      const { placements } = await compare({ covariance });
      let checked = 0;
      placements.forEach((placed) => {
        const row = specimenIds.indexOf(placed.id);
        for (const group of placed.groups) {
          const reference = wanted[group.name];
          const member = reference.members_1based.indexOf(row + 1);
          expect(group.leaveOneOut).toBe(member >= 0);
          expectClose(group.d2!, member >= 0 ? reference.loo_D2_members[member] : reference.D2_all_rows[row]);
          if (member < 0 && group.membership !== null)
            expectClose(group.membership, reference.p_nonmember_all_rows[row]);
          checked++;
        }
      });
      expect(checked).toBe(45 * 3);
      expect(placements.some((placed) => placed.groups.some((group) => group.membership !== null))).toBe(
        true,
      );
    },
  );
});
