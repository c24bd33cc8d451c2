import type { NewFiring } from '../../contract/firing.ts';
import type { InventedLog } from './firing-log.ts';
import { INVENTED } from './recipes.ts';

/**
 * The invented trial behind the nine tiles: two firings that never burned, and zones that nobody painted. Grades
 * follow the tiles' notes and go glassy where the paint lies thicker, so that the question can be asked and answered.
 */
type Grade = 'matt' | 'satin' | 'glossy';
type DemoFiring = Pick<
  NewFiring,
  'name' | 'date' | 'place' | 'fuel' | 'weather' | 'note' | 'stages' | 'readings'
> & { readonly log: InventedLog };

const minutes = (n: number) => n * 60;
/** Readings by a thermocouple of class 2 beside the pot: minute and °C. */
const readings = (taken: readonly (readonly [minute: number, celsius: number])[]): NewFiring['readings'] =>
  taken.map(([minute, celsius]) => ({
    ...{ at: minutes(minute), where: 'beside the pot' },
    reading: {
      ...{ kind: 'thermocouple' as const, celsius, resolution: 1 },
      sensor: { kind: 'class' as const, type: 'K' as const, class: 2 as const },
    },
  }));

export const DEMO_FIRINGS: readonly DemoFiring[] = [
  {
    ...{ name: 'Firing 1 (invented)', date: '2026-02-21', place: 'Pit behind the workshop, Tessary Vale' },
    ...{ fuel: 'Split ash, then brushwood', weather: 'Dry, 6 °C, light wind from the west' },
    readings: readings([
      [10, 120],
      [30, 310],
      [55, 520],
      [80, 660],
      [105, 770],
      [120, 822],
      [130, 806],
      [150, 640],
      [190, 390],
    ]),
    note: `${INVENTED} Tiles 1 to 5 stood on edge round the pot; the fire was let burn open to the end.`,
    stages: [
      { air: 'reducing', from: 0, to: minutes(50), note: 'Smoky while the wood caught' },
      { air: 'oxidising', from: minutes(50), to: minutes(190), note: 'Open fire' },
    ],
    log: {
      ...{ fileName: 'firing-1-invented.csv', edge: 0.09, spike: 64, gap: [165, 172], seed: 21 },
      corners: [
        [0, 10],
        [10, 122],
        [30, 312],
        [55, 523],
        [80, 664],
        [105, 774],
        [117, 826],
        [121, 834],
        [130, 808],
        [150, 642],
        [190, 392],
        [225, 260],
      ],
    },
  },
  {
    ...{ name: 'Firing 2 (invented)', date: '2026-03-07', place: 'Pit behind the workshop, Tessary Vale' },
    ...{ fuel: 'Split ash', weather: 'Dry, 9 °C, gusts' },
    readings: readings([
      [10, 140],
      [35, 420],
      [60, 630],
      [85, 780],
      [100, 838],
      [112, 829],
      [135, 610],
      [170, 370],
    ]),
    note: `${INVENTED} Tiles 6 to 9. A gust drove smoke over the front row near the top temperature.`,
    stages: [
      { air: 'reducing', from: 0, to: minutes(40), note: null },
      { air: 'oxidising', from: minutes(40), to: minutes(170), note: 'Open fire' },
    ],
    log: {
      ...{ fileName: 'firing-2-invented.csv', edge: 0.06, spike: 22, gap: [150, 152], seed: 7 },
      corners: [
        [0, 11],
        [10, 142],
        [35, 424],
        [60, 633],
        [85, 784],
        [97, 844],
        [102, 856],
        [112, 834],
        [135, 612],
        [170, 372],
        [205, 250],
      ],
    },
  },
];

export interface DemoTile {
  readonly label: string;
  readonly firing: string;
  readonly place: string;
  readonly settings: Readonly<Record<string, number | string>>;
  /** A1, B1, C1, A2, B2, C2. */
  readonly coats: readonly number[];
  readonly grades: readonly Grade[];
  /** As typed by eye; where there is a picture, what it shows. */
  readonly colours: readonly string[];
}

const word = { m: 'matt', s: 'satin', g: 'glossy' } as const;

interface Seen {
  readonly firing: 0 | 1;
  readonly place: string;
  readonly roast: string;
  /** PbO of the fired paint as weighed, wt%. */
  readonly lead: number;
  /** Of the whole tile, or zone by zone. */
  readonly colour: string | readonly string[];
}

function tile(label: string, coats: readonly number[], grades: string, seen: Seen): DemoTile {
  const { place, roast, lead, colour } = seen;
  return {
    ...{ label, coats, place },
    colours: typeof colour === 'string' ? coats.map(() => colour) : colour,
    firing: DEMO_FIRINGS[seen.firing]!.name,
    settings: { 'lead roast': roast, 'PbO as weighed (wt%)': lead },
    grades: [...grades].map((letter) => word[letter as keyof typeof word]),
  };
}

const [RAW, ONCE, TWICE, FRIT] = ['raw', 'once', 'twice', 'fritted'];
const front = { firing: 0, place: 'front' } as const;
const back = { firing: 0, place: 'back' } as const;
const later = { firing: 1, place: 'front' } as const;
const laterBack = { firing: 1, place: 'back' } as const;

export const DEMO_TILES: readonly DemoTile[] = [
  tile('Tile 1', [2, 1, 2, 3, 2, 2], 'mmmmmm', { ...front, roast: RAW!, lead: 21, colour: 'grey-black' }),
  tile('Tile 2', [1, 2, 3, 2, 2, 4], 'mmmmms', { ...back, roast: RAW!, lead: 30, colour: 'grey in places' }),
  tile('Tile 3', [1, 2, 1, 1, 2, 1], 'mmmmsm', {
    ...front,
    roast: ONCE!,
    lead: 49,
    colour: 'black, red below',
  }),
  tile('Tile 4', [2, 3, 1, 2, 3, 2], 'ssmsgs', {
    ...{ ...back, roast: ONCE!, lead: 49 },
    colour: ['brown', 'dark brown', 'brown', 'brown', 'dark brown', 'brown'],
  }),
  tile('Tile 5', [4, 2, 5, 3, 4, 5], 'gsgggg', {
    ...{ ...front, roast: ONCE!, lead: 49 },
    colour: ['black', 'brown', 'black', 'dark brown', 'black', 'black'],
  }),
  tile('Tile 6', [3, 5, 4, 2, 4, 1], 'ggggsm', {
    ...laterBack,
    roast: TWICE!,
    lead: 49,
    colour: 'rich black',
  }),
  tile('Tile 7', [4, 2, 5, 3, 4, 1], 'smsmsm', { ...later, roast: TWICE!, lead: 27, colour: 'black' }),
  tile('Tile 8', [3, 4, 2, 5, 1, 4], 'sgsgmg', { ...later, roast: ONCE!, lead: 49, colour: 'brown' }),
  tile('Tile 9', [2, 4, 3, 5, 4, 1], 'sggggs', { ...laterBack, roast: FRIT!, lead: 49, colour: 'black' }),
];

/** About how thick each coat dried, µm, as a gauge would read it: rounded to 5. */
export const thicknessOf = (coats: number, seat: number): number =>
  5 * Math.round((coats * 17 + ((seat * 7) % 5) * 2 - 4) / 5);
