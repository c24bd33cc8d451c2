import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { FrozenPlacement } from '../../../../api/contract/placement.ts';
import { Button, LinkButton } from '../../../parts/Button.tsx';
import { withFormulas } from '../../placement/words.ts';
import { SlideFigure } from './SlideFigure.tsx';
import { talkSteps } from './steps.ts';
import './talk.css';

export interface TalkProps {
  readonly kept: FrozenPlacement;
  readonly replica: string | null;
  /** Where one comes back to. */
  readonly back: string;
}
const FORWARD = ['ArrowRight', 'ArrowDown', 'PageDown', ' '];
const BACKWARD = ['ArrowLeft', 'ArrowUp', 'PageUp'];

/** A placement in a few steps that fill the screen. All of it is at hand: nothing is asked of the network. */
export function Talk({ kept, replica, back }: TalkProps) {
  const { name, result } = kept;
  const steps = useMemo(() => talkSteps(name, result, replica), [name, result, replica]);
  const [at, setAt] = useState(0);
  const [, navigate] = useLocation();
  const stage = useRef<HTMLElement>(null);
  const go = useCallback((to: number) => setAt(Math.max(0, Math.min(steps.length - 1, to))), [steps.length]);
  useEffect(() => {
    stage.current?.focus();
    document.title = `${name} – Nearsherd`;
  }, [name]);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const onButton =
        event.key === ' ' && event.target instanceof HTMLElement && event.target.closest('a,button');
      if (onButton) return;
      if (FORWARD.includes(event.key)) go(at + 1);
      else if (BACKWARD.includes(event.key)) go(at - 1);
      else if (event.key === 'Home') go(0);
      else if (event.key === 'End') go(steps.length - 1);
      else if (event.key === 'Escape' && document.fullscreenElement === null) navigate(back);
      else return;
      event.preventDefault();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [at, go, steps.length, navigate, back]);
  const step = steps[at]!;
  const words = withFormulas(step.words, result.model.parts);
  return (
    <section ref={stage} className={`talk ${step.id.replace(' ', '-')}`} aria-label="Talk" tabIndex={-1}>
      <div className="talk-step" aria-live="polite">
        <h1>{step.heading}</h1>
        <p className="talk-words">{words}</p>
        <SlideFigure step={step} steps={steps} />
      </div>
      <div className="talk-bar">
        <Button isDisabled={at === 0} onPress={() => go(at - 1)}>
          Back
        </Button>
        <Button isDisabled={at === steps.length - 1} onPress={() => go(at + 1)}>
          Next
        </Button>
        <span>
          {at + 1} of {steps.length}
        </span>
        <Button look="quiet" onPress={() => void stage.current?.requestFullscreen?.().catch(() => {})}>
          Full screen
        </Button>
        <LinkButton look="quiet" to={back}>
          Leave
        </LinkButton>
      </div>
    </section>
  );
}
