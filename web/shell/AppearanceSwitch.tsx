import { setAppearance, useAppearanceChoice } from '../appearance.ts';
import { HalfDisc } from '../parts/icons.tsx';
import { Select } from '../parts/Select.tsx';

const CHOICES = [
  { id: 'system', label: 'As the system' },
  { id: 'light', label: 'Light' },
  { id: 'dark', label: 'Dark' },
] as const;

/** Light or dark, or whatever the machine is set to. */
export function AppearanceSwitch() {
  return (
    <Select
      label="Light or dark"
      hideLabel
      icon={<HalfDisc />}
      choices={CHOICES}
      value={useAppearanceChoice()}
      onChange={setAppearance}
    />
  );
}
