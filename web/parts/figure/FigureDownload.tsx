import { Button, Menu, MenuItem, MenuTrigger, Popover, Text } from 'react-aria-components';
import type { Figure } from '../../../api/figures/figure.ts';
import { svgFile } from '../../../api/figures/serialise.ts';
import { THEMES } from '../../../api/figures/themes.ts';
import { saveFile } from '../CsvDownload.tsx';
import { Caret } from '../icons.tsx';
import type { FigureViewProps } from './FigureView.tsx';

const FORMS = [
  { id: 'page-light', label: 'As on the page', hint: '760 px wide, light', width: 760 },
  { id: 'slide', label: 'For a slide', hint: 'Large type, 960 px wide', width: 960 },
  { id: 'print', label: 'For print', hint: 'One column, 84 mm wide', width: 238 },
] as const;

/** Saves a figure as it stands as an SVG file. */
export function FigureDownload<Data>(
  at: Pick<FigureViewProps<Data>, 'source' | 'height'> & {
    readonly figure: Figure<Data>;
    readonly name: string;
  },
) {
  const save = (form: (typeof FORMS)[number]) => {
    const theme = THEMES[form.id];
    const data = at.source.get();
    const sheet = {
      width: form.width,
      height: Math.round(at.height(data, form.width, theme)),
      theme,
      window,
    };
    saveFile(`${at.name}.svg`, svgFile(at.figure, data, sheet), 'image/svg+xml');
  };
  return (
    <MenuTrigger>
      <Button className="button quiet">
        <span>Download as SVG</span>
        <Caret />
      </Button>
      <Popover offset={2}>
        <Menu className="list" aria-label="Download as SVG">
          {FORMS.map((form) => (
            <MenuItem key={form.id} className="option" textValue={form.label} onAction={() => save(form)}>
              <Text slot="label">{form.label}</Text>
              <Text slot="description" className="hint">
                {form.hint}
              </Text>
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
