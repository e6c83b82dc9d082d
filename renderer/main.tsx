/** Starts the renderer: connects to whichever host serves this page, then draws the app. */
import './zodWithoutEval.ts';
import '@mantine/core/styles.css';
import '@mantine/dates/styles.css';
import './styles/fonts.css';
import './styles/global.css';
import './styles/shell.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { Look } from './Look.tsx';
import { CoreAccess } from './operations/CoreAccess.tsx';
import { createQueries } from './operations/createQueries.ts';
import { connect } from './transport/connect.ts';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no #root');
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={createQueries()}>
      <CoreAccess transport={connect()}>
        <Look>
          <App />
        </Look>
      </CoreAccess>
    </QueryClientProvider>
  </StrictMode>,
);
