import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './kit/tokens.css';
import { App } from './App.tsx';
import { keepFocusNear } from './kit/shell/keepFocusNear.ts';
import { queries, startFollowing } from './link/service.ts';

const root = document.getElementById('root');
if (!root) throw new Error('The page has no root element');

startFollowing();
keepFocusNear(window);
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
