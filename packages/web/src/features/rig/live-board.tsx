import type { PullAtRig, RigDesk } from '@provinghouse/contract';
import { useEffect, useRef } from 'react';
import { text } from '../../lib/text.ts';
import { EndWords } from './end-words.tsx';
import { Keeping } from './keeping.tsx';
import { LiveCurve } from './live-curve.tsx';
import { LiveFacts } from './live-facts.tsx';
import { LiveKeys } from './live-keys.tsx';
import type { LiveState } from './live-state.ts';
import { LiveWords } from './live-words.tsx';
import { Silence } from './silence.tsx';
import { SoundSwitches } from './sound-switches.tsx';
import { SpeedGauge } from './speed-gauge.tsx';

interface LiveBoardProps {
  readonly desk: RigDesk;
  readonly state: LiveState;
  readonly setDesk: (desk: RigDesk) => void;
  /** On to the next pull, once this one has ended. */
  readonly onNext: () => void;
}

/** The pull while it is armed, while it runs and when it has ended. */
export function LiveBoard({ desk, state, setDesk, onNext }: LiveBoardProps) {
  const { armed, ended } = state;
  const facts: PullAtRig | null = desk.pull?.pull === armed?.pull ? desk.pull : null;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    window.scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  if (!armed) return null;
  return (
    <>
      <header className="rig-head">
        <h1 ref={heading} tabIndex={-1}>
          {text.rig.pullOf(armed.pull, armed.piece)}
        </h1>
        <p className="soft">{text.rig.title(armed.rig)}</p>
        <SoundSwitches state={state} />
      </header>
      <Silence state={state} limit_s={facts?.silence_s ?? null} />
      <div className={`live${armed.isPractice ? ' live-practice' : ''}`}>
        {armed.isPractice ? <Across /> : null}
        <ForceNow state={state} />
        <Stage state={state} />
        <LiveCurve state={state} facts={facts} />
        <div className="live-side">
          <LiveFacts state={state} />
          <SpeedGauge view={ended ? null : state.view} window={facts?.tableSpeedLimits_mm_per_min ?? null} />
          <LiveWords state={state} />
        </div>
      </div>
      {ended ? (
        <EndWords desk={desk} state={state} facts={facts} setDesk={setDesk} onNext={onNext} />
      ) : state.keeping !== null ? (
        <Keeping share={state.keeping} />
      ) : (
        <LiveKeys rig={desk.rig} state={state} setDesk={setDesk} />
      )}
    </>
  );
}

/** The word across the board of a practice pull; the line at the top says the same to those who do not see it. */
function Across() {
  return (
    <svg className="across" viewBox="0 0 1000 420" preserveAspectRatio="xMidYMid meet" aria-hidden="true">
      <text x="500" y="270" textAnchor="middle" transform="rotate(-14 500 210)">
        {text.rig.practice}
      </text>
    </svg>
  );
}

function ForceNow({ state }: { readonly state: LiveState }) {
  const isKept = state.received > 0;
  return (
    <section className="force-now" aria-label={text.rig.force}>
      <h2>{isKept || state.ended ? text.rig.force : text.rig.zero}</h2>
      <p className="numeral" aria-live="off">
        <span className="numeral-value">{numeral(forceOf(state))}</span>
        <span className="numeral-unit">kN</span>
      </p>
      {state.view && state.view.rangeGuard !== 'clear' ? (
        <p className="range-guard">{text.rig.range[state.view.rangeGuard]}</p>
      ) : null}
    </section>
  );
}

function Stage({ state }: { readonly state: LiveState }) {
  const { view, startedAt } = state;
  const isSealing = state.keeping !== null && !state.ended;
  const stage = startedAt === null ? text.rig.armed : view ? text.rig.stage[view.stage] : text.rig.waiting;
  return (
    <section className="stage" aria-label={text.rig.stageLabel}>
      <h2>{text.rig.stageLabel}</h2>
      <p className={`stage-word${view?.stage === 'near maximum' ? ' stage-near' : ''}`} role="status">
        {isSealing ? text.rig.sealing : stage}
      </p>
      <dl className="maxima">
        <div>
          <dt>{text.rig.maximumSoFar}</dt>
          <dd>
            <Maximum force_kN={view?.maximumSoFar_kN ?? null} />
          </dd>
        </div>
        <div>
          <dt>{text.rig.maximumAccepted}</dt>
          <dd>
            <Maximum force_kN={view?.maximumAccepted_kN ?? null} />
          </dd>
        </div>
      </dl>
    </section>
  );
}

function Maximum({ force_kN }: { readonly force_kN: number | null }) {
  if (force_kN === null) return <span className="maximum-none">{text.rig.notYet}</span>;
  return (
    <>
      {numeral(force_kN)}
      <span className="unit">kN</span>
    </>
  );
}

/** While it is recorded the force goes with the maximum beside it: both ten times a second, of the same moment. */
function forceOf({ view, force_kN }: LiveState): number | null {
  return view ? view.force_kN : force_kN;
}

/** A force for the wall: two places, as the bench shows it; a true minus. */
function numeral(force_kN: number | null): string {
  if (force_kN === null) return text.none;
  const digits = force_kN.toFixed(2);
  return (/[1-9]/.test(digits) ? digits : digits.replace('-', '')).replace('-', '\u2212');
}
