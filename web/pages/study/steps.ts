import type { Study } from '../../../api/contract/study.ts';

export interface Step {
  readonly id: string;
  readonly done: boolean;
  readonly title: string;
  readonly words: string;
  /** Under the study. */
  readonly to: string;
  readonly button: string;
}

/** Sherds that carry a group's spread: below four no distance in its own spread can be given at all. */
const FEWEST = 4;

/** The way through the job, in its order; steps that what is there does not lead to yet are left out. */
export function stepsOf(
  { counts }: Pick<Study, 'counts'>,
  groups: readonly { readonly specimens: number }[],
): Step[] {
  const usable = groups.filter((group) => group.specimens >= FEWEST).length;
  const steps: (Step & { readonly fits: boolean })[] = [
    {
      ...{ id: 'intake', fits: true, done: counts.analyses > 0 && counts.specimens > counts.replicas },
      title: 'Bring in the sherds',
      words: 'A laboratory’s file, or a table pasted from a paper: one row or more for each sherd.',
      ...{ to: '/intake', button: 'Bring in a file' },
    },
    {
      ...{ id: 'sherds', fits: true, done: usable > 0 },
      title: 'Sort them into ware groups',
      words: `A group needs ${FEWEST} analysed sherds before a tile can be set against its spread; ten or more say much more.`,
      ...{ to: '/sherds', button: 'To the sherds' },
    },
    {
      ...{ id: 'bench', fits: true, done: counts.batches > 0 },
      title: 'Weigh a batch',
      words: 'See what a paint fires to before it is fired, or find the batch nearest to a ware group.',
      ...{ to: '/bench', button: 'To the bench' },
    },
    {
      ...{ id: 'tiles', fits: counts.batches + counts.firings + counts.replicas > 0, done: counts.tiles > 0 },
      title: 'Make a tile',
      words: 'Plan which coats and settings go where, so that the fire can tell what matters.',
      ...{ to: '/fire/plans/new', button: 'Draw up a plan' },
    },
    {
      ...{ id: 'firing', fits: counts.tiles > 0, done: counts.firings > 0 },
      title: 'Record the firing',
      words: 'Fuel, weather and air, readings by hand or a logger’s file.',
      ...{ to: '/fire/firings', button: 'To the firings' },
    },
    {
      ...{ id: 'judge', fits: counts.tiles > 0 && counts.firings > 0, done: counts.judged > 0 },
      title: 'Judge the tiles, zone by zone',
      words: 'Matt, satin or glossy: at the fire by phone, or at the table.',
      ...{ to: '/fire/sheet', button: 'To the sheet for the phone' },
    },
    {
      ...{ id: 'replicas', fits: true, done: counts.replicas > 0 },
      title: 'Bring in your replicas',
      words:
        'The analyses of your fired tiles, as a file or typed in by hand. Choose “replica” as what they are.',
      ...{ to: '/intake', button: 'Bring in replicas' },
    },
    {
      ...{ id: 'placement', fits: true, done: counts.placements > 0 },
      title: 'Place the replicas',
      words: 'How near each tile lies to each ware group, and which oxides make up the distance.',
      ...{ to: '/placement', button: 'Place them' },
    },
    {
      ...{ id: 'share', fits: counts.placements > 0, done: counts.shares > 0 },
      title: 'Share what you found',
      words: 'A link for one archaeologist, figures for a paper, or a report for the file.',
      ...{ to: '/share', button: 'To sharing' },
    },
  ];
  return steps.filter((step) => step.fits).map(({ fits: _, ...step }) => step);
}

/** What can be asked again with every new tile; none before zones are judged. */
export function standingSteps({ counts }: Pick<Study, 'counts'>): Pick<Step, 'title' | 'to'>[] {
  if (counts.judged === 0) return [];
  return [
    { title: 'See what mattered', to: '/fire/mattered' },
    { title: 'Find the tile that would tell most', to: '/fire/next' },
  ];
}
