import type { ReactNode } from 'react';
import { Mark } from '../parts/icons.tsx';
import { AppearanceSwitch } from './AppearanceSwitch.tsx';
import { Frame } from './Frame.tsx';

/** Around what is shared: who was given a share reaches nothing but the share. */
export const SharedShell = ({ children }: { readonly children: ReactNode }) => (
  <Frame
    wordmark={<PlainWordmark />}
    beside={
      <div className="head-end">
        <AppearanceSwitch />
      </div>
    }
    foot="Shared from Nearsherd, which runs on the machine of whoever shared it."
  >
    {children}
  </Frame>
);

export const PlainWordmark = () => (
  <span className="wordmark">
    <Mark />
    Nearsherd
  </span>
);
