/** Starts the renderer: connects to whichever host serves this page, then draws the app. */
import './zodWithoutEval.ts';
import '@mantine/core/styles.css';
import '@mantine/dates/styles.css';
import './styles/fonts.css';
import './styles/global.css';
import './styles/shell.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { Look } from './Look.tsx';
import { CoreAccess } from './operations/CoreAccess.tsx';
import { connect } from './transport/connect.ts';

// The core is on this computer: nothing is retried blindly, and the browser's idea of being online does not matter.
const queries = new QueryClient({
  defaultOptions: {
    queries: { retry: false, networkMode: 'always', staleTime: 5_000, refetchOnWindowFocus: true },
    mutations: { retry: false, networkMode: 'always' },
  },
});

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no #root');
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <CoreAccess transport={connect()}>
        <Look>
          <App />
        </Look>
      </CoreAccess>
    </QueryClientProvider>
  </StrictMode>,
);
