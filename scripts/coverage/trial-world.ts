import type { RandomStream } from '../../api/domain/statistics/random.ts';
import { shuffled } from '../../api/domain/trials/orders.ts';
import { GRADES, type Zone } from '../../api/domain/trials/types.ts';

/** How invented tiles come out of an invented fire. Effects are on the log-odds of a glossy zone. */
export interface Fire {
  readonly tiles: number;
  readonly zonesPerTile: number;
  /** Per coat; coats 1, 2, … are put on the zones of each tile in random order. */
  readonly thickness: number;
  /** Of brushing instead of pouring, half the zones of each tile at random. */
  readonly brush: number;
  /** Of a long roast instead of a short one, half the tiles at random. */
  readonly roast: number;
  /** Standard deviation of the tiles' own level. */
  readonly tileSpread: number;
  /** `measured`: the thickness as measured, not whole coats: one coat with a standard deviation of a third. */
  readonly coats: 'whole' | 'measured';
  readonly grades: 'two' | 'proportional' | 'adjacent';
}

const logisticNoise = ({ uniform }: RandomStream) => {
  const u = Math.max(uniform(), 1e-12);
  return Math.log(u / (1 - u));
};

/** Three grades from a push, with odds of neighbouring grades multiplied by e^push. */
function adjacentGrade(push: number, { uniform }: RandomStream): number {
  const weights = [1, Math.exp(push), Math.exp(2 * push)];
  const at = uniform() * weights.reduce((a, b) => a + b, 0);
  return at < weights[0]! ? 0 : at < weights[0]! + weights[1]! ? 1 : 2;
}

function gradeOf(push: number, fire: Fire, random: RandomStream): number {
  if (fire.grades === 'adjacent') return adjacentGrade(push, random);
  const seen = push + logisticNoise(random);
  if (fire.grades === 'two') return seen > 0 ? 2 : 0;
  return seen > 0.75 ? 2 : seen > -0.75 ? 1 : 0;
}

const halves = (n: number) => Array.from({ length: n }, (_, i) => i % 2);

/** The zones of one trial. Coats are centred, so that about half the zones come out glossy. */
export function fireTrial(fire: Fire, random: RandomStream): Zone[] {
  const roasts = shuffled(halves(fire.tiles), random.uniform);
  return roasts.flatMap((roast, t) => {
    const own = fire.tileSpread * random.normal() + fire.roast * (roast - 0.5);
    const whole = shuffled(
      Array.from({ length: fire.zonesPerTile }, (_, i) => i + 1),
      random.uniform,
    );
    const brushes = shuffled(halves(fire.zonesPerTile), random.uniform);
    return whole.map((w, i): Zone => {
      const coats = fire.coats === 'whole' ? w : Math.round(100 * (w + random.normal() / 3)) / 100;
      const middle = (fire.zonesPerTile + 1) / 2;
      const push = own + fire.thickness * (coats - middle) + fire.brush * (brushes[i]! - 0.5);
      return {
        id: `${t}-${i}`,
        label: `${i + 1}`,
        tile: `${t}`,
        tileLabel: `T${t + 1}`,
        firing: t < fire.tiles / 2 || fire.tiles < 8 ? 'F1' : 'F2',
        factors: {
          coats,
          brush: brushes[i] ? 'brushed' : 'poured',
          roast: roast ? 'long' : 'short',
        },
        grade: GRADES[gradeOf(push, fire, random)]!,
        glassyShare: 0.5 + push / 20 + random.normal() / 10,
      };
    });
  });
}
