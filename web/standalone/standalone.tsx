import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { StandaloneShare } from './StandaloneShare.tsx';
import './fonts.css';
import '../style/all.ts';

/** The page of a share that was saved as one file: all it shows stands in it, and it asks nothing of any network. */
const root = document.getElementById('page');
const frozen = document.getElementById('frozen')?.textContent;
if (root && frozen)
  createRoot(root).render(
    <StrictMode>
      <StandaloneShare content={JSON.parse(frozen)} />
    </StrictMode>,
  );
