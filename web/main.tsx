import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import './style/fonts.css';
import './style/tokens.css';
import './style/base.css';
import './style/layout.css';
import './style/look.css';
import './style/sub-nav.css';
import './style/button.css';
import './style/field.css';
import './style/table.css';
import './style/dialog.css';
import './style/notice.css';
import './style/pages.css';
import './style/print.css';

const root = document.getElementById('page');
if (root)
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
