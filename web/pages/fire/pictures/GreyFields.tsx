import type { Picture } from '../../../../api/contract/picture.ts';
import { lightnessOf, reflectanceOf } from '../../../../api/domain/colour/lab.ts';
import { Button } from '../../../parts/Button.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { useChangePicture } from '../../../queries/pictures.ts';

const round = (value: number, step: number) => Math.round(value / step) * step;

/** How much light the grey patch gives back: by its share, or by its lightness where the maker prints that. */
export function GreyFields(at: {
  readonly study: string;
  readonly picture: Picture;
  readonly reflectance: number;
  readonly onChange: (reflectance: number) => void;
}) {
  const { picture, reflectance } = at;
  const save = useChangePicture(at.study);
  const { grey } = picture;
  const changed = grey !== null && Math.abs(grey.reflectance - reflectance) > 1e-6;
  return (
    <div className="stack tight">
      <div className="fields">
        <NumberField
          label="Light it gives back"
          unit="%"
          hint="18 % is common for grey cards; the maker prints it"
          {...{ min: 1, max: 100 }}
          value={Number(round(100 * reflectance, 0.01).toFixed(2))}
          onChange={(share) => share !== null && at.onChange(share / 100)}
        />
        <NumberField
          label="or its lightness L*"
          {...{ min: 9, max: 100 }}
          value={Number(round(lightnessOf(reflectance), 0.01).toFixed(2))}
          onChange={(lightness) => lightness !== null && at.onChange(reflectanceOf(lightness))}
        />
      </div>
      {changed && (
        <div className="row">
          <Button
            isPending={save.isPending}
            onPress={() => save.mutate({ picture: picture.id, change: { grey: { ...grey, reflectance } } })}
          >
            Save this for the grey drawn here
          </Button>
        </div>
      )}
      <ErrorNotice error={save.error} title="Not saved" />
    </div>
  );
}
