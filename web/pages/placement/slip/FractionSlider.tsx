import { Label, Slider, SliderOutput, SliderThumb, SliderTrack } from 'react-aria-components';
import { STEP } from './placer.ts';
import { showShare } from './words.ts';

/** The share of slip drawn off, from none to the most there can be. */
export function FractionSlider(at: {
  readonly value: number;
  readonly most: number;
  readonly onChange: (f: number) => void;
  readonly words: string;
  readonly describedBy: string;
}) {
  return (
    <Slider
      className="slider"
      value={Math.min(at.value, at.most)}
      minValue={0}
      maxValue={at.most}
      step={STEP}
      onChange={(f) => at.onChange(Number(f.toFixed(3)))}
      aria-describedby={at.describedBy}
    >
      <Label className="label">Slip drawn off, f (share by mass)</Label>
      <SliderOutput className="slider-value">{at.words}</SliderOutput>
      <SliderTrack className="slider-track">
        {({ state }) => (
          <>
            <div className="slider-fill" style={{ width: `${100 * state.getThumbPercent(0)}%` }} />
            <SliderThumb className="slider-thumb" aria-describedby={at.describedBy} />
          </>
        )}
      </SliderTrack>
      <span className="slider-ends small faint" aria-hidden="true">
        <span>0</span>
        <span>{showShare(at.most)}</span>
      </span>
    </Slider>
  );
}
