import type { Comparison } from '../../../../api/contract/placement.ts';
import { showAnalyte } from '../../../parts/numbers.ts';
import { COVARIANCES, covarianceId, fallenOutReason, SCALES } from '../../placement/words.ts';

/** What was asked, setting by setting, in words and as the request that repeats it. */
export function SettingsList({ result }: { readonly result: Comparison }) {
  const { request, model, groups, slip } = result;
  const { settings, normalisation, measured, replicas, leaveOut } = request;
  const { volatileFree, ...forms } = normalisation;
  const limits = Object.entries(settings.replacement.limits);
  const facts: [string, string][] = [
    [
      'Ware groups',
      groups.map(({ name, used, specimens }) => `${name} (${used} of ${specimens})`).join('; '),
    ],
    ['Measured', measured],
    ['Replicas', replicas === null ? 'every replica so measured' : `${replicas.length} chosen by hand`],
    ['Oxides compared', model.parts.map(showAnalyte).join(', ')],
    ['Oxides chosen', settings.parts === null ? 'all measured in every sherd and replica' : 'by hand'],
    [
      'Oxides not compared',
      model.fallenOut
        .map((one) => `${showAnalyte(one.oxide)}: ${fallenOutReason(one) || 'not chosen'}`)
        .join('; ') || 'none',
    ],
    ['Written as', Object.values(forms).map(showAnalyte).join(', ')],
    ['Volatiles', volatileFree ? 'taken out' : 'left in'],
    ['Scale', SCALES.find(({ id }) => id === settings.scale)!.label],
    ['Spread', COVARIANCES.find(({ id }) => id === covarianceId(settings.covariance))!.label],
    ['Below detection', `${settings.replacement.fraction} of the limit`],
    [
      'Limits by hand',
      limits.map(([oxide, limit]) => `${showAnalyte(oxide)} ${limit} wt%`).join('; ') || 'none',
    ],
    ['Left out by hand', leaveOut.length === 0 ? 'none' : String(leaveOut.length)],
    [
      'Slip drawn off',
      (slip ?? [])
        .map(({ label, f, sigma, slip: of, from }) => `${label}: ${f} ± ${sigma} of the ${of} (${from})`)
        .join('; ') || 'none',
    ],
  ];
  return (
    <section className="stack" aria-labelledby="settings-heading">
      <h2 id="settings-heading">Settings</h2>
      <dl className="facts">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
