import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import type { PageProps } from './paths.ts';

/** A stage of the job, in the order it is done. Each holds its own deeper pages under `path`. */
export interface Stage {
  readonly id: string;
  /** Under `/studies/:study`. */
  readonly path: string;
  readonly label: string;
  readonly page: LazyExoticComponent<ComponentType<PageProps>>;
}

export const STAGES: readonly Stage[] = [
  { id: 'study', path: '', label: 'Study', page: lazy(() => import('./pages/study/StudyPage.tsx')) },
  {
    id: 'sherds',
    path: '/sherds',
    label: 'Sherds',
    page: lazy(() => import('./pages/sherds/SherdsStage.tsx')),
  },
  {
    id: 'intake',
    path: '/intake',
    label: 'Intake',
    page: lazy(() => import('./pages/intake/IntakePage.tsx')),
  },
  {
    id: 'bench',
    path: '/bench',
    label: 'Bench',
    page: lazy(() => import('./pages/bench/BenchStage.tsx')),
  },
  {
    id: 'fire',
    path: '/fire',
    label: 'Fire',
    page: lazy(() => import('./pages/fire/FireStage.tsx')),
  },
  {
    id: 'placement',
    path: '/placement',
    label: 'Placement',
    page: lazy(() => import('./pages/placement/PlacementStage.tsx')),
  },
  { id: 'share', path: '/share', label: 'Share', page: lazy(() => import('./pages/share/ShareStage.tsx')) },
];
