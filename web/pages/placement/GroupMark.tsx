import { colourOf, markOf, marksPath } from '../../../api/figures/marks.ts';
import { useFigureTheme } from '../../parts/figure/useFigureTheme.ts';

/** A ware group's own mark and colour, as on the plots. */
export function GroupMark({ slot }: { readonly slot: number }) {
  const theme = useFigureTheme();
  return (
    <svg className="group-mark" viewBox="0 0 16 16" aria-hidden="true">
      <path d={marksPath(markOf(slot), 9, [{ x: 8, y: 8 }])} fill={colourOf(slot, theme)} />
    </svg>
  );
}
