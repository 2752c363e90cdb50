import './statistic-figure.css';
import { useComputedColorScheme } from '@mantine/core';
import type { FigureSetting, FigureTable } from '@provinghouse/figure';
import { csvOf, shownCells } from '@provinghouse/figure';
import { type ReactNode, type RefObject, useEffect, useRef, useState } from 'react';
import { isPrinting, onPrinting } from '../lib/printing.ts';
import { save, savedPng, savedSvg } from '../lib/save-figure.ts';
import { text } from '../lib/text.ts';

interface StatisticFigureProps {
  readonly title: string;
  /** How to read it. */
  readonly how?: string;
  /** What the files are called, without their ending. */
  readonly file: string;
  readonly draw: (setting: FigureSetting) => SVGSVGElement;
  readonly table: FigureTable;
}

/** A figure with its words, its numbers as a table, and a way to take either along. */
export function StatisticFigure({ title, how, file, draw, table }: StatisticFigureProps) {
  return (
    <figure className="statistic">
      <figcaption>
        <h3>{title}</h3>
        {how === undefined ? null : <p className="soft small">{how}</p>}
      </figcaption>
      <Drawing draw={draw} />
      <div className="statistic-foot">
        <details className="statistic-numbers">
          <summary>{text.picture.numbers}</summary>
          <Numbers table={table} title={title} />
        </details>
        <SaveButtons title={title} file={file} draw={draw} table={table} />
      </div>
    </figure>
  );
}

/** Drawn to the width of its place once that comes near the window or is printed, and anew when width or ground changes. */
export function Drawing({ draw }: Pick<StatisticFigureProps, 'draw'>) {
  const host = useRef<HTMLDivElement>(null);
  const isNear = useNear(host);
  const ground = useComputedColorScheme('light', { getInitialValueInEffect: false });
  useEffect(() => {
    const place = host.current;
    if (place === null || !isNear) return;
    let width = 0;
    const redraw = () => {
      const wide = Math.max(leastWidth, Math.floor(place.clientWidth));
      if (wide === width) return;
      width = wide;
      const em = typeShare * Number.parseFloat(getComputedStyle(place).fontSize);
      place.replaceChildren(draw({ document, width, em, theme: ground === 'dark' ? 'screen-dark' : 'screen-light' }));
    };
    redraw();
    const watch = new ResizeObserver(redraw);
    watch.observe(place);
    return () => watch.disconnect();
  }, [draw, ground, isNear]);
  return <div ref={host} className={isNear ? 'statistic-drawing' : 'statistic-drawing statistic-waiting'} />;
}

/** Within a window's height or so of what is seen, a figure is drawn before it is scrolled to. */
const nearness = '700px';

/** Whether a place has come near the window, or the page is about to be printed. Once near, it stays so. */
function useNear(host: RefObject<HTMLElement | null>): boolean {
  const [isNear, setNear] = useState(isPrinting);
  useEffect(() => {
    const place = host.current;
    if (place === null || isNear) return;
    const watch = new IntersectionObserver(
      (entries) => {
        if (entries.some((entry) => entry.isIntersecting)) setNear(true);
      },
      { rootMargin: nearness },
    );
    watch.observe(place);
    const off = onPrinting(() => setNear(true));
    return () => {
      watch.disconnect();
      off();
    };
  }, [host, isNear]);
  return isNear;
}

/** The words of a figure are set a little smaller than those of the page. */
const typeShare = 0.82;

/** Narrower than this a figure scrolls instead of losing its words, in CSS pixels. */
const leastWidth = 620;

/** The numbers of a figure as a table. */
export function Numbers({ table, title }: { readonly table: FigureTable; readonly title: string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reached by the keyboard
    <section className="pad-scroll statistic-table" aria-label={title} tabIndex={0}>
      <table className="leaf">
        <thead>
          <tr>
            {table.columns.map((column) => (
              <th key={column.key} scope="col" className={column.isNumber ? 'num' : undefined}>
                {column.heading}
                {column.unit === null ? null : <span className="unit">{column.unit}</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shownCells(table).map((row, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own and never move
            <tr key={index}>
              {row.map((cell, place) => (
                <td
                  key={table.columns[place]?.key ?? place}
                  className={table.columns[place]?.isNumber ? 'num' : undefined}
                >
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Takes a figure along as SVG or PNG, its numbers as CSV. */
export function SaveButtons({ title, file, draw, table }: Omit<StatisticFigureProps, 'how'>) {
  const [failed, setFailed] = useState(false);
  const kinds: readonly (readonly [ending: string, make: () => Promise<Blob> | Blob])[] = [
    ['svg', () => savedSvg(draw)],
    ['png', () => savedPng(draw)],
    ['csv', () => new Blob([csvOf(table)], { type: 'text/csv;charset=utf-8' })],
  ];
  const press = async (ending: string, make: () => Promise<Blob> | Blob) => {
    try {
      save(await make(), `${file}.${ending}`);
      setFailed(false);
    } catch {
      setFailed(true);
    }
  };
  return (
    <div className="statistic-save">
      {kinds.map(([ending, make]) => (
        <button key={ending} type="button" className="press" onClick={() => press(ending, make)}>
          {text.picture.save(ending)}
          <span className="for-ears">{`: ${title}`}</span>
        </button>
      ))}
      <output className="soft small">{failed ? text.picture.notSaved : ''}</output>
    </div>
  );
}

/** A column of figures. */
export function StatisticFigures({ children }: { readonly children: ReactNode }) {
  return <div className="statistics">{children}</div>;
}
