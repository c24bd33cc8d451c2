import type { ReactNode } from 'react';
import { Button } from '../../../parts/Button.tsx';
import { Tick } from '../../../parts/Tick.tsx';

export interface TickItem {
  readonly id: string;
  readonly label: ReactNode;
  readonly name: string;
  readonly hint?: string | undefined;
}

/** Several of a list. `chosen` null is all of them, also those that come later. */
export function TickList(at: {
  readonly label: string;
  readonly items: readonly TickItem[];
  readonly chosen: readonly string[] | null;
  readonly onChange: (chosen: readonly string[] | null) => void;
  readonly all: string;
}) {
  const every = at.items.map(({ id }) => id);
  const chosen = new Set(at.chosen ?? every);
  const toggle = (id: string, on: boolean) => {
    const next = every.filter((one) => (one === id ? on : chosen.has(one)));
    at.onChange(next.length === every.length ? null : next);
  };
  return (
    <fieldset className="choices">
      <legend className="label">{at.label}</legend>
      <div className={at.items.length > 12 ? 'tick-list long' : 'tick-list'}>
        {at.items.map(({ id, label, name, hint }) => (
          <Tick
            key={id}
            isSelected={chosen.has(id)}
            onChange={(on) => toggle(id, on)}
            aria-label={hint ? `${name}, ${hint}` : name}
          >
            {label}
            {hint && <span className="hint small faint"> {hint}</span>}
          </Tick>
        ))}
      </div>
      {at.chosen !== null && (
        <div>
          <Button look="quiet" onPress={() => at.onChange(null)}>
            {at.all}
          </Button>
        </div>
      )}
    </fieldset>
  );
}
