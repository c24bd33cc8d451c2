import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { openInWords, stageInWords } from '../../../../api/domain/firing/stages.ts';
import { count } from '../../../parts/numbers.ts';

/** Day, place, fuel, weather, tiles, and the stages of air. */
export function FiringFacts({ firing }: { readonly firing: FiringRecord }) {
  const facts: readonly (readonly [string, string])[] = [
    ['Day', firing.date ?? ''],
    ['Place', firing.place],
    ['Fuel', firing.fuel],
    ['Weather', firing.weather],
    ['Tiles', count(firing.tiles.length, 'tile')],
  ];
  return (
    <>
      <dl className="facts">
        {facts
          .filter(([, value]) => value !== '')
          .map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
      </dl>
      {(firing.stages.length > 0 || firing.open) && (
        <ul>
          {firing.stages.map((stage) => (
            <li key={`${stage.air} ${stage.from}`}>
              {stageInWords(stage)}
              {stage.note && `: ${stage.note}`}
            </li>
          ))}
          {firing.open && <li>{openInWords(firing.open)}</li>}
        </ul>
      )}
    </>
  );
}
