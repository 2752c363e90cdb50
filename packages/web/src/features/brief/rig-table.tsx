import type { RigBrief, RigCheck } from '@provinghouse/contract';
import type { Verdict } from '@provinghouse/core';
import { Figure } from '../../components/figure.tsx';
import { Opens } from '../../components/opens.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { setFigure } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { unbroken } from './planned-text.ts';

/** Each rig against the forces expected: suited or not, and why. */
export function RigTable({ rigs }: { readonly rigs: readonly RigBrief[] }) {
  const { rigHead: head } = text.brief;
  if (rigs.length === 0) return <p className="soft">{text.brief.noRigs}</p>;
  return (
    <section className="pad-scroll" aria-label={text.brief.rigsCaption}>
      <table className="leaf plan rigs">
        <caption className="for-ears">{text.brief.rigsCaption}</caption>
        <thead>
          <tr>
            <th scope="col">{head.size}</th>
            <th scope="col">{head.basis}</th>
            <th scope="col" className="num">
              {head.forces}
            </th>
            <th scope="col" className="num">
              {head.needed}
            </th>
            <th scope="col">{head.suited}</th>
          </tr>
        </thead>
        {rigs.map((rig) => (
          <tbody key={rig.rig}>
            <tr className="plan-product">
              <th scope="rowgroup" colSpan={5}>
                <strong className="brief-supplier">{rig.rig}</strong> <span className="soft">{factsOf(rig)}</span>
                {rig.description === null ? null : <span className="line soft small">{rig.description}</span>}
              </th>
            </tr>
            {rig.checks.map((check) => (
              <CheckRow key={`${check.nominalSize_mm} ${check.basis}`} rig={rig.rig} check={check} />
            ))}
          </tbody>
        ))}
      </table>
    </section>
  );
}

function factsOf({ rangeMinimum_kN: from, rangeMaximum_kN: to, ...rig }: RigBrief): string {
  const words = text.brief;
  const force = (value: number | null) => (value === null ? words.unknown : `${value}\u00a0kN`);
  return [
    words.rigRange(from === null ? words.unknown : String(from), force(to)),
    words.rigClass(rig.class === null ? words.unknown : String(rig.class)),
    words.rigStep(force(rig.resolution_kN)),
    rig.certificate === null
      ? words.noCertificate
      : words.certificate(rig.certificate.number, rig.certificate.calibratedOn, rig.certificate.dueOn),
    words.rigPulls(rig.pulls),
  ].join(', ');
}

/** The mark of a verdict serves: same shapes, words of its own. */
function markOf(isSuited: boolean | null): { readonly verdict: Verdict; readonly words: string } {
  if (isSuited === null) return { verdict: 'not judged', words: text.brief.suited.open };
  return isSuited
    ? { verdict: 'conforms', words: text.brief.suited.yes }
    : { verdict: 'does not conform', words: text.brief.suited.no };
}

function CheckRow({ rig, check: planned }: { readonly rig: string; readonly check: RigCheck }) {
  const { check, nominalSize_mm, basis, least_kN, greatest_kN, margin } = planned;
  const size = `${nominalSize_mm}\u00a0mm`;
  const { verdict, words } = markOf(check.isSuited);
  const failed = check.findings.filter(({ isMet }) => isMet !== true);
  return (
    <tr>
      <th scope="row">{size}</th>
      <td>{text.brief.basis[basis]}</td>
      <td className="num figure">
        {setFigure({ value: least_kN, unit: 'kN' }).value} – <Figure value={greatest_kN} unit="kN" />
      </td>
      <td className="num">
        <Figure value={greatest_kN * margin} unit="kN" />
      </td>
      <td>
        <Opens title={`${rig}, ${size}, ${text.brief.basis[basis]}`} content={<Reasons check={check} />}>
          <VerdictMark verdict={verdict}>{words}</VerdictMark>
        </Opens>
        {failed.map(({ what, sentence }) => (
          <span key={what} className="line soft small">
            {unbroken(sentence)}
          </span>
        ))}
      </td>
    </tr>
  );
}

function Reasons({ check }: { readonly check: RigCheck['check'] }) {
  return (
    <>
      <ul>
        {check.findings.map(({ what, sentence }) => (
          <li key={what}>{sentence}</li>
        ))}
      </ul>
      <p className="soft">{check.method}.</p>
    </>
  );
}
