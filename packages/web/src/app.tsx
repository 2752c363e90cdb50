import { lazy, type ReactNode, Suspense, useEffect } from 'react';
import { Link, Route, Switch, useLocation, useRoute } from 'wouter';
import { LoadGuard } from './components/load-guard.tsx';
import { Masthead } from './components/masthead.tsx';
import { Notice, Reading } from './components/notice.tsx';
import { bench } from './lib/entry/book.ts';
import { leaveScreen } from './lib/entry/outbox.ts';
import { hrefs, patterns } from './lib/route.ts';
import { text } from './lib/text.ts';
import { noteVisit } from './lib/visits.ts';

const Campaigns = lazy(() => import('./features/campaigns/campaigns.tsx'));
const Board = lazy(() => import('./features/board/board.tsx'));
const Piece = lazy(() => import('./features/piece/piece.tsx'));
const Commission = lazy(() => import('./features/commission/commission.tsx'));
const Samples = lazy(() => import('./features/samples/samples.tsx'));
const Brief = lazy(() => import('./features/brief/brief.tsx'));
const Findings = lazy(() => import('./features/findings/findings.tsx'));
const Ledger = lazy(() => import('./features/ledger/ledger.tsx'));
const Gauging = lazy(() => import('./features/gauging/gauging.tsx'));
const Pulls = lazy(() => import('./features/pulls/pulls.tsx'));
const Breaks = lazy(() => import('./features/breaks/breaks.tsx'));
const Zinc = lazy(() => import('./features/zinc/zinc.tsx'));
const Rulebook = lazy(() => import('./features/rulebook/rulebook.tsx'));
const Reckoner = lazy(() => import('./features/reckoner/reckoner.tsx'));
const Rigs = lazy(() => import('./features/rig/rigs.tsx'));
const Wires = lazy(() => import('./features/rig/wires.tsx'));
const Rig = lazy(() => import('./features/rig/rig.tsx'));
const Kit = lazy(() => import('./features/kit/kit.tsx'));
const Instrument = lazy(() => import('./features/kit/instrument.tsx'));
const Issue = lazy(() => import('./features/issue/issue.tsx'));
const Start = lazy(() => import('./features/start/start.tsx'));
const People = lazy(() => import('./features/people/people.tsx'));

/** Which screen stands at which address. */
export function App() {
  const [, params] = useRoute('/c/:code/*?');
  const [location] = useLocation();
  useEffect(() => {
    noteVisit(location);
    return leaveScreen;
  }, [location]);
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
      <Route path={patterns.newCampaign}>
        <Commission />
      </Route>
      <Route path={patterns.samples}>{({ code }) => <Samples code={code} key={code} />}</Route>
      <Route path={patterns.brief}>{({ code }) => <Brief code={code} />}</Route>
      <Route path={patterns.findings}>{({ code }) => <Findings code={code} />}</Route>
      <Route path={patterns.issue}>{({ code }) => <Issue code={code} key={code} />}</Route>
      <Route path={patterns.ledger}>{({ code }) => <Ledger book={code} key={code} />}</Route>
      <Route path={patterns.piece}>{({ code, piece }) => <Piece code={code} piece={piece} key={piece} />}</Route>
      <Route path={patterns.gauging}>{({ code }) => <Gauging code={code} piece={null} />}</Route>
      <Route path={patterns.gaugingOf}>{({ code, piece }) => <Gauging code={code} piece={piece} />}</Route>
      <Route path={patterns.pulls}>{({ code }) => <Pulls code={code} key={code} />}</Route>
      <Route path={patterns.breaks}>{({ code }) => <Breaks code={code} pull={null} />}</Route>
      <Route path={patterns.breakOf}>{({ code, pull }) => <Breaks code={code} pull={pull} />}</Route>
      <Route path={patterns.zinc}>{({ code }) => <Zinc code={code} piece={null} />}</Route>
      <Route path={patterns.zincOf}>{({ code, piece }) => <Zinc code={code} piece={piece} />}</Route>
      <Route path={patterns.rulebook}>{({ page }) => <Rulebook page={page ?? null} />}</Route>
      <Route path={patterns.reckoner}>
        <Reckoner />
      </Route>
      <Route path={patterns.benchLedger}>
        <Ledger book={bench} />
      </Route>
      <Route path={patterns.start}>
        <Start />
      </Route>
      <Route path={patterns.kit}>
        <Kit />
      </Route>
      <Route path={patterns.instrument}>
        {({ instrument }) => <Instrument instrument={instrument} key={instrument} />}
      </Route>
      <Route path={patterns.people}>
        <People />
      </Route>
      <Route path={patterns.rigs}>
        <Rigs />
      </Route>
      <Route path={patterns.wires}>{({ rig }) => <Wires rig={rig} key={rig} />}</Route>
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
