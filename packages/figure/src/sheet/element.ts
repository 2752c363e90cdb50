/// <reference lib="dom" />

const namespace = 'http://www.w3.org/2000/svg';

/** An SVG element with its attributes and content. Numbers are written to a hundredth: finer than any printer or screen. */
export function element(
  document: Document,
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  content: readonly (Element | string)[] = [],
): SVGElement {
  const made = document.createElementNS(namespace, name) as SVGElement; // the namespace makes it one
  for (const [attribute, value] of Object.entries(attributes)) {
    made.setAttribute(attribute, typeof value === 'number' ? String(Number(value.toFixed(2))) : value);
  }
  made.append(...content);
  return made;
}
