import { text } from '../lib/text.ts';
import type { FieldShell } from './form-field.tsx';
import { ChainDrawing, chainRegion } from './link-drawing-chain.tsx';
import { DrawnChoice } from './link-drawing-choice.tsx';
import type { LinkProportion } from './link-drawing-proportion.ts';
import { chainScene } from './link-drawing-scene.ts';

interface ChainChoiceProps extends FieldShell {
  readonly proportion: LinkProportion;
  /** Free links of the piece. */
  readonly links: number;
  /** The link chosen; 0 for a gripped one, null for none. */
  readonly at: number | null;
  readonly onChange: (link: number) => void;
  /** The drawing in words. */
  readonly alt: string;
  /** Links with something to be told of. */
  readonly marked?: ReadonlySet<number>;
  /** True where a gripped link may be chosen, and each by its number on the keyboard. */
  readonly isOfBreak?: boolean;
}

/** A link of a piece, chosen on the drawing of the piece in its grips. */
export function ChainChoice(props: ChainChoiceProps) {
  const { label, hint, fault = null, proportion, links, at, onChange, alt, marked, isOfBreak = false } = props;
  const scene = chainScene(proportion, links);
  const words = text.entry.drawn;
  const choices = [...(isOfBreak ? [0] : []), ...scene.links.map(({ link }) => link)];
  return (
    <DrawnChoice
      layout="below"
      label={label}
      hint={hint}
      fault={fault}
      value={at === null ? null : `${at}`}
      onChange={(link) => onChange(Number(link))}
      drawing={{
        viewBox: scene.viewBox,
        alt,
        content: <ChainDrawing scene={scene} at={at} {...(marked ? { marked } : {})} />,
      }}
      options={choices.map((link) => ({
        value: `${link}`,
        label: link === 0 ? words.gripped : words.link(link),
        letter: isOfBreak && link <= 9 ? `${link}` : null,
        region: chainRegion(scene, link),
      }))}
    />
  );
}
