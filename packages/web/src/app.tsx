import { lazy, type ReactNode, Suspense } from 'react';
import { Link, Route, Switch, useLocation, useRoute } from 'wouter';
import { LoadGuard } from './components/load-guard.tsx';
import { Masthead } from './components/masthead.tsx';
import { Notice, Reading } from './components/notice.tsx';
import { hrefs, patterns } from './lib/route.ts';
import { text } from './lib/text.ts';

const Campaigns = lazy(() => import('./features/campaigns/campaigns.tsx'));
const Board = lazy(() => import('./features/board/board.tsx'));
const Piece = lazy(() => import('./features/piece/piece.tsx'));
const Brief = lazy(() => import('./features/brief/brief.tsx'));
const Findings = lazy(() => import('./features/findings/findings.tsx'));
const Ledger = lazy(() => import('./features/ledger/ledger.tsx'));
const Rig = lazy(() => import('./features/rig/rig.tsx'));

/** Which screen stands at which address. */
export function App() {
  const [, params] = useRoute('/c/:code/*?');
  const [location] = useLocation();
  return (
    <>
      <Masthead code={params?.code ?? null} />
      <main id="matter" tabIndex={-1}>
        <LoadGuard key={location}>
          <Suspense fallback={<Reading />}>
            <Screens />
          </Suspense>
        </LoadGuard>
      </main>
    </>
  );
}

function Screens(): ReactNode {
  return (
    <Switch>
      <Route path={patterns.campaigns}>
        <Campaigns />
      </Route>
      <Route path={patterns.brief}>{({ code }) => <Brief code={code} />}</Route>
      <Route path={patterns.findings}>{({ code }) => <Findings code={code} />}</Route>
      <Route path={patterns.ledger}>{({ code }) => <Ledger code={code} />}</Route>
      <Route path={patterns.piece}>{({ code, piece }) => <Piece code={code} piece={piece} key={piece} />}</Route>
      <Route path={patterns.rig}>{({ rig }) => <Rig rig={rig} key={rig} />}</Route>
      <Route path={patterns.board}>{({ code }) => <Board code={code} />}</Route>
      <Route>
        <Notice title={text.fault.nowhere}>
          <p>{text.fault.nowhereCure}</p>
          <p>
            <Link href={hrefs.campaigns()}>{text.fault.toList}</Link>
          </p>
        </Notice>
      </Route>
    </Switch>
  );
}
