import {
  Button,
  Header,
  Menu,
  MenuItem,
  MenuSection,
  MenuTrigger,
  Popover,
  Text,
} from 'react-aria-components';
import { Caret } from '../parts/icons.tsx';
import { studyPath } from '../paths.ts';
import { useStudies } from '../queries/studies.ts';

/** Names the study one is in, and leads to the others. */
export function StudySwitcher({ study }: { readonly study: string }) {
  const studies = useStudies();
  const current = studies.data?.find((one) => one.id === study);
  const name = current?.name ?? 'Studies';
  return (
    <MenuTrigger>
      <Button className="button quiet switcher" aria-label={`${name}: change study`}>
        <span>{name}</span>
        <Caret />
      </Button>
      <Popover offset={2}>
        <Menu className="list" aria-label="Studies">
          <MenuSection>
            <Header className="list-heading">Studies</Header>
            {(studies.data ?? []).map((one) => (
              <MenuItem
                key={one.id}
                id={one.id}
                href={studyPath(one.id)}
                className="option"
                textValue={one.name}
                aria-current={one.id === study ? 'true' : undefined}
              >
                <Text slot="label">{one.name}</Text>
                {one.demo && (
                  <Text slot="description" className="hint">
                    Invented data
                  </Text>
                )}
              </MenuItem>
            ))}
          </MenuSection>
          <MenuItem href="/" className="option" textValue="All studies">
            All studies …
          </MenuItem>
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
