import type { Sheet } from '../../../../api/contract/sheet.ts';
import { placeInWords } from '../../../../api/domain/trials/place-words.ts';

/** Where each tile goes in the fire, for whoever sets them. */
export function Standing({ tiles }: { readonly tiles: Sheet['tiles'] }) {
  // A copy that an older version left on the phone knows no position.
  const placed = tiles
    .map(({ id, label, place, position = null }) => ({ id, label, where: placeInWords({ place, position }) }))
    .filter(({ where }) => where !== '');
  if (placed.length === 0) return null;
  return (
    <details>
      <summary>Where the tiles stand</summary>
      <ul>
        {placed.map(({ id, label, where }) => (
          <li key={id}>
            {label}: {where}
          </li>
        ))}
      </ul>
    </details>
  );
}
