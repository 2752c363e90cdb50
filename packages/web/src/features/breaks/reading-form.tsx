import { type Row, rowWith } from '@provinghouse/contract';
import { breakQuestions } from '@provinghouse/core';
import { useRef } from 'react';
import { ChainChoice } from '../../components/chain-choice.tsx';
import { DrawnForm } from '../../components/drawn-form.tsx';
import { TextField } from '../../components/form-field.tsx';
import { DrawnChoice } from '../../components/link-drawing-choice.tsx';
import { LinkDrawing } from '../../components/link-drawing-link.tsx';
import type { LinkProportion } from '../../components/link-drawing-proportion.ts';
import { type LinkPlace, linkPlaces, linkScene } from '../../components/link-drawing-scene.ts';
import { dropDraft, useDraft } from '../../lib/entry/draft.ts';
import { enter } from '../../lib/entry/enter.ts';
import { peopleRows } from '../../lib/entry/people-rows.ts';
import { text } from '../../lib/text.ts';
import { breakModes, FractureDrawing } from './fracture-drawing.tsx';
import type { PulledPiece } from './pulled-pieces.ts';

interface ReadingFormProps {
  readonly code: string;
  readonly pulled: PulledPiece;
  readonly examiner: string;
  readonly proportion: LinkProportion;
  readonly product: Row<'products'> | null;
  readonly people: readonly Row<'people'>[];
  readonly onKept: () => void;
  readonly onCancel?: () => void;
}

const parts = ['link', 'position', 'mode'] as const;
type Part = (typeof parts)[number];
const nothing = { link: '', position: '', mode: '', note: '' };

/** One person's reading of one broken link, on drawings of the piece, of the link and of the fracture face. */
export function ReadingForm(props: ReadingFormProps) {
  const { code, pulled, examiner, people, onKept, onCancel } = props;
  const { pull, piece, mine } = pulled;
  const words = text.breaks;
  const draft = `break ${code} ${pull.pull} ${examiner}`;
  const [typed, setTyped] = useDraft(draft, nothing);
  const form = useRef<HTMLFormElement>(null);
  const set = (part: string, value: string) =>
    setTyped((now) => ({ ...now, [part]: value, ...(part === 'link' ? placeWith(value, now.position ?? '') : {}) }));
  const choose = (part: Part, value: string) => {
    set(part, value);
    showPart(form.current, part);
  };
  const faultOf = faultsOf(typed, mine);
  const send = () => {
    const { link, position = '', mode = '', note } = typed;
    const row = rowWith('breaks', {
      pull: pull.pull,
      link: Number(link),
      examiner,
      position,
      mode,
      note: note?.trim() || null,
    });
    const rows = { people: peopleRows(people, examiner), breaks: [row] };
    return enter({ book: code, label: words.entry(piece.piece) }, { rows });
  };
  return (
    <DrawnForm
      form={form}
      typed={typed}
      isSound={parts.every((part) => faultOf[part] === null)}
      questions={breakQuestions(draftOf(typed))}
      keys={letterKeys(piece.links, choose)}
      keep={words.keep}
      keepKey={words.keepKey}
      send={send}
      onKept={() => {
        dropDraft(draft);
        onKept();
      }}
      onCancel={onCancel}
    >
      {(isAsked) => (
        <>
          <Parts {...props} typed={typed} faultOf={isAsked ? faultOf : noFaults} set={set} />
          <div className="reading-part">
            <TextField
              label={words.note.label}
              hint={words.note.hint}
              rows={2}
              value={typed.note ?? ''}
              onChange={(note) => set('note', note)}
            />
          </div>
        </>
      )}
    </DrawnForm>
  );
}

type Typed = Readonly<Record<string, string>>;
type Faults = Readonly<Record<Part, string | null>>;
const noFaults: Faults = { link: null, position: null, mode: null };

/** A gripped link parted in the grip, unless another place is chosen for it. */
function placeWith(link: string, position: string): { readonly position?: string } {
  if (link === '0' && position === '') return { position: 'in grip' };
  return link !== '0' && position === 'in grip' ? { position: '' } : {};
}

function draftOf({ link = '', position = '', mode = '' }: Typed) {
  return {
    link: link === '' ? null : Number(link),
    position: position === '' ? null : position,
    mode: mode === '' ? null : mode,
  };
}

function faultsOf(typed: Typed, mine: PulledPiece['mine']): Faults {
  const { link, place, mode, taken } = text.breaks;
  const isTaken = mine.some(({ body }) => String(body.link) === typed.link);
  return {
    link: typed.link === '' ? link.fault : isTaken ? taken : null,
    position: typed.position === '' ? place.fault : null,
    mode: typed.mode === '' ? mode.fault : null,
  };
}

function letterKeys(links: number, choose: (part: Part, value: string) => void): Record<string, () => void> {
  const keys: Record<string, () => void> = {};
  for (let link = 0; link <= Math.min(links, 9); link += 1) keys[`${link}`] = () => choose('link', `${link}`);
  for (const place of linkPlaces) keys[text.breaks.place.letters[place]] = () => choose('position', place);
  for (const mode of breakModes) keys[text.breaks.mode.letters[mode]] = () => choose('mode', mode);
  return keys;
}

/** After a letter the part that comes next is brought into view. */
function showPart(form: HTMLFormElement | null, chosen: Part): void {
  const next = form?.querySelectorAll('fieldset, .reading-part')[parts.indexOf(chosen) + 1];
  next?.scrollIntoView({ block: 'nearest' });
}

interface PartsProps extends ReadingFormProps {
  readonly typed: Typed;
  readonly faultOf: Faults;
  readonly set: (part: Part, value: string) => void;
}

function Parts({ pulled, proportion, product, typed, faultOf, set }: PartsProps) {
  const { link, place, mode, drawnBy } = text.breaks;
  const scene = linkScene(proportion);
  const size_mm = product?.nominal_size_mm ?? null;
  const pitch = size_mm === null ? `${proportion.pitch} d` : `${Math.round(proportion.pitch * size_mm * 100) / 100} mm`;
  const by = proportion.basis === 'rulebook' ? drawnBy.rulebook(claimOf(product)) : drawnBy[proportion.basis];
  return (
    <>
      <ChainChoice
        label={link.label}
        hint={link.hint}
        fault={faultOf.link}
        alt={link.alt(pulled.piece.links)}
        proportion={proportion}
        links={pulled.piece.links}
        at={typed.link === '' ? null : Number(typed.link)}
        isOfBreak
        onChange={(at) => set('link', `${at}`)}
      />
      <DrawnChoice
        layout="beside"
        label={place.label}
        hint={`${place.hint} ${by}`}
        fault={faultOf.position}
        value={typed.position ?? ''}
        onChange={(value) => set('position', value)}
        drawing={{
          viewBox: scene.viewBox,
          alt: place.alt,
          content: <LinkDrawing scene={scene} letters={capitals(place.letters)} pitchWords={place.pitch(pitch)} />,
        }}
        options={linkPlaces.map((one) => ({
          value: one,
          label: place.names[one],
          letter: place.letters[one],
          words: place.words[one],
          region: scene.regions[one],
        }))}
      />
      <DrawnChoice
        layout="pictures"
        label={mode.label}
        hint={mode.hint}
        fault={faultOf.mode}
        value={typed.mode ?? ''}
        onChange={(value) => set('mode', value)}
        options={breakModes.map((one) => ({
          value: one,
          label: mode.names[one],
          letter: mode.letters[one],
          words: mode.words[one],
          picture: <FractureDrawing mode={one} />,
        }))}
      />
    </>
  );
}

function capitals(letters: Readonly<Record<LinkPlace, string>>): Readonly<Record<LinkPlace, string>> {
  const all = Object.entries(letters).map(([place, letter]) => [place, letter.toUpperCase()]);
  // The same places as were given.
  return Object.fromEntries(all) as Record<LinkPlace, string>;
}

function claimOf(product: Row<'products'> | null): string {
  if (product === null) return '';
  const grade = product.grade === null ? '' : `, grade ${product.grade}`;
  return `${product.specification}${grade}, ${product.nominal_size_mm} mm`;
}
