import '@fontsource-variable/source-sans-3/wght.css';
import '@mantine/core/styles/baseline.css';
import '@mantine/core/styles/default-css-variables.css';
import '@mantine/core/styles/global.css';
import '@mantine/core/styles/Popover.css';
import '@mantine/core/styles/SegmentedControl.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/frame.css';
import './styles/matter.css';
import './styles/form.css';
import { MantineProvider } from '@mantine/core';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { openOutbox } from './lib/entry/outbox.ts';
import { groundManager } from './lib/scheme.ts';

openOutbox();

const root = document.getElementById('root');
if (root === null) throw new Error('the page has no root element');

// The server's policy forbids style elements written by script: variables and classes come from the style sheets instead.
createRoot(root).render(
  <StrictMode>
    <MantineProvider
      defaultColorScheme="auto"
      colorSchemeManager={groundManager}
      withCssVariables={false}
      withGlobalClasses={false}
      withStaticClasses={false}
    >
      <App />
    </MantineProvider>
  </StrictMode>,
);
