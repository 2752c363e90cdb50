import type { GaugingPlace } from '@provinghouse/core';
import { type KeyboardEvent, useEffect, useRef } from 'react';
import { Link } from 'wouter';
import { Page, Section } from '../../components/page.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import type { DeskState } from './desk-state.ts';
import type { PieceAtDesk } from './gauging-desk.ts';
import { nextPiece } from './gauging-progress.ts';
import { LastRead } from './last-read.tsx';
import { PasteSheet } from './paste-sheet.tsx';
import { PlaceGridTable } from './place-grid.tsx';
import { PlaceMatter } from './place-matter.tsx';
import { quantityWords } from './place-words.ts';
import { ReadingField } from './reading-field.tsx';
import { ReadingNeeds, ReadingSettings } from './reading-settings.tsx';
import { ReadingTable } from './reading-table.tsx';
import { RefusedReadings } from './refused-readings.tsx';
import { useFieldFocus } from './use-field-focus.ts';
import { usePasted } from './use-pasted.ts';
import { useReading } from './use-reading.ts';

const words = text.gaugingDesk;

interface ReadingPageProps {
  readonly desk: DeskState;
  readonly at: PieceAtDesk;
}

/** The gauging of one piece: the place at hand, its field, what was read, and all places. */
export function ReadingPage({ desk, at }: ReadingPageProps) {
  const { code, kit, person } = desk;
  const box = useRef<HTMLInputElement>(null);
  const now = useReading(desk, at, box);
  const { index, place } = now;
  const { pasted, openPaste, closePaste } = usePasted();
  useFieldFocus(box, `${at.piece} ${place === null}`);
  const note = index === null ? {} : { note: words.now.of(index + 1, at.progress.places.length) };
  const focus = () => box.current?.focus();
  return (
    <Page
      title={words.titleOf(at.piece)}
      mark={<Link href={hrefs.gauging(code)}>{words.now.toList}</Link>}
      aside={<UndoKey undo={now.undo} />}
    >
      <LastRead desk={desk} />
      <RefusedReadings desk={desk} />
      <Section label={words.now.label} {...note}>
        <ReadingNeeds desk={desk} onReady={focus} />
        {place === null ? (
          <AllRead desk={desk} piece={at.piece} onKey={now.onKey} />
        ) : (
          <PlaceMatter at={at} place={place} isAgain={now.isAgain} readings={now.inputs}>
            {now.isReady ? (
              <ReadingField
                place={fieldName(at.piece, place)}
                box={box}
                read={now.read}
                onKeep={now.keep}
                onKey={now.onKey}
              />
            ) : null}
          </PlaceMatter>
        )}
        <ReadingSettings desk={desk} at={at} onReady={focus} />
        {place === null ? null : <KeyLegend again={now.again} skip={now.skip} paste={() => openPaste('')} />}
      </Section>
      <Section label={words.grid.label} note={words.grid.how}>
        <PlaceGridTable at={at} grid={now.grid} index={index} onChoose={now.moveTo} />
      </Section>
      <Section label={words.table.label} note={words.table.how}>
        <ReadingTable desk={desk} at={at} />
      </Section>
      {pasted === null || kit.chosen === null || person === null ? null : (
        <PasteSheet
          desk={desk}
          at={at}
          start={pasted}
          onClose={() => {
            closePaste();
            setTimeout(focus);
          }}
        />
      )}
    </Page>
  );
}

function fieldName(piece: string, place: GaugingPlace): string {
  const again = place.repeat > 1 ? `, ${words.place.repeat(place.repeat)}` : '';
  return `${piece}, ${words.place.link(place.link)}, ${quantityWords(place)}${again}`;
}

interface AllReadProps {
  readonly desk: DeskState;
  readonly piece: string;
  readonly onKey: (event: KeyboardEvent) => boolean;
}

function AllRead({ desk, piece, onKey }: AllReadProps) {
  const next = nextPiece(desk.pieces, piece);
  const first = useRef<HTMLAnchorElement>(null);
  useEffect(() => first.current?.focus(), []);
  return (
    <div className="gauging-done">
      <p className="gauging-place">{next === null ? words.now.allDone : words.now.done}</p>
      <p className="soft">{words.now.doneHow}</p>
      <p className="form-keys">
        <Link
          ref={first}
          className="press press-main"
          href={next === null ? hrefs.gauging(desk.code) : hrefs.gaugingOf(desk.code, next)}
          onKeyDown={(event: KeyboardEvent) => {
            if (onKey(event)) event.preventDefault();
          }}
        >
          {next === null ? words.now.toList : words.now.toNext(next)}
        </Link>
      </p>
    </div>
  );
}

/** Always there, so that nothing moves with the first reading. */
function UndoKey({ undo }: { readonly undo: (() => void) | null }) {
  return (
    <button type="button" className="press press-small gauging-undo" disabled={undo === null} onClick={() => undo?.()}>
      {words.last.undo} <kbd>Ctrl Z</kbd>
    </button>
  );
}

interface KeyLegendProps {
  readonly again: () => void;
  readonly skip: () => void;
  readonly paste: () => void;
}

/** What the keys do, each pressed here as well. */
function KeyLegend({ again, skip, paste }: KeyLegendProps) {
  const { keys } = words.now;
  const press = (key: string, label: string, onClick: () => void) => (
    <button type="button" className="press press-small" onClick={onClick}>
      <kbd>{key}</kbd> {label}
    </button>
  );
  return (
    <p className="gauging-keys">
      {press('R', keys.again, again)}
      {press('S', keys.skip, skip)}
      {press('Ctrl V', keys.paste, paste)}
      <span className="soft small">
        <kbd>←</kbd> <kbd>→</kbd> <kbd>↑</kbd> <kbd>↓</kbd> {keys.move}, <kbd>Page ↑</kbd> <kbd>Page ↓</kbd>{' '}
        {keys.piece}
      </span>
    </p>
  );
}
