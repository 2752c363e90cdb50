import latin from '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2?url';
import type { FigureSetting } from '@provinghouse/figure';

/** A saved figure is the one of the report: black on white, in the width of its text, in points. */
const savedWidth = 447;

const savedMargin = 12;

/** Dots of a PNG for each point: about 290 to the inch on the page of the report. */
const dotsPerPoint = 4;

type Draw = (setting: FigureSetting) => SVGSVGElement;

/** The figure as an SVG file with its type inside, so that it looks alike wherever it is opened. */
export async function savedSvg(draw: Draw): Promise<Blob> {
  const drawn = draw({ document, width: savedWidth, theme: 'paper' });
  drawn.prepend(groundOf(drawn));
  const face = `@font-face{font-family:"Source Sans 3";font-weight:200 900;src:url(data:font/woff2;base64,${await fontBytes()})}`;
  // Put in as text: the page itself may hold no inline style, a file may.
  const source = new XMLSerializer().serializeToString(drawn).replace('<rect', `<style>${face}</style><rect`);
  return new Blob([source], { type: 'image/svg+xml' });
}

/** White behind the figure and a margin around it. */
function groundOf(drawn: SVGSVGElement): SVGElement {
  const width = savedWidth + 2 * savedMargin;
  const height = Number(drawn.getAttribute('height')) + 2 * savedMargin;
  const box = { x: -savedMargin, y: -savedMargin, width, height, fill: '#ffffff' };
  drawn.setAttribute('viewBox', `${box.x} ${box.y} ${width} ${height}`);
  drawn.setAttribute('width', String(width));
  drawn.setAttribute('height', String(height));
  const ground = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  for (const [name, value] of Object.entries(box)) ground.setAttribute(name, String(value));
  return ground;
}

/** The same as a PNG, by way of an image and a canvas. */
export async function savedPng(draw: Draw): Promise<Blob> {
  const address = URL.createObjectURL(await savedSvg(draw));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = image.naturalWidth * dotsPerPoint;
    canvas.height = image.naturalHeight * dotsPerPoint;
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise<Blob>((resolve, reject) => {
      canvas.toBlob((blob) => (blob === null ? reject(new Error('the picture could not be made')) : resolve(blob)));
    });
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** Hands a file to the browser to be kept. */
export function save(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the address after the press; a minute is ample for a file of this size.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

async function fontBytes(): Promise<string> {
  const reply = await fetch(latin);
  if (!reply.ok) throw new Error('the font could not be read');
  const bytes = new Uint8Array(await reply.arrayBuffer());
  let characters = '';
  for (const byte of bytes) characters += String.fromCharCode(byte);
  return btoa(characters);
}
