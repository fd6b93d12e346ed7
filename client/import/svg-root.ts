import { type FileTrouble, trouble } from './plan-file.ts';
import type { SvgNode } from './svg-node.ts';

/** Elements of a drawing; more would keep a phone busy. */
const MOST_ELEMENTS = 50_000;
/** What is looked into; the contents of anything else (scripts, styles, definitions) are never read. */
const OPENED = new Set(['svg', 'g', 'a', 'switch']);
/** Elements within elements. */
const DEEPEST = 100;
const NO_ATTRIBUTES = new Map<string, string>();

/** What a browser's XML parser gives; only what is used of it. */
export interface ParsedElement {
  readonly localName: string;
  readonly attributes: Iterable<{ readonly name: string; readonly value: string }>;
  readonly children: Iterable<ParsedElement>;
}

/** Copies an element with what is drawn in it; null when there is too much of it. */
function plain(element: ParsedElement, left: { elements: number }, depth: number): SvgNode | null {
  if (--left.elements < 0) return null;
  const children: SvgNode[] = [];
  if (OPENED.has(element.localName) && depth < DEEPEST) {
    for (const child of element.children) {
      const copy = plain(child, left, depth + 1);
      if (!copy) return null;
      children.push(copy);
    }
  }
  const attributes = Array.from(element.attributes, ({ name, value }) => [name, value] as const);
  return {
    name: element.localName,
    attributes: attributes.length > 0 ? new Map(attributes) : NO_ATTRIBUTES,
    children,
  };
}

/** Reads XML; null where it is broken. The document is never shown, so nothing in it runs or is fetched. */
export type XmlReader = (text: string) => ParsedElement | null;

/** Names that turn plain XML into things that a browser gives handlers, styles and pictures to. */
const LIVE_NAMES = /http:\/\/www\.w3\.org\/(?:2000\/svg|1999\/xhtml)/g;

/** The browser's own reader of XML; under other names the elements are mere text with children. */
export const browserXml: XmlReader = (text) => {
  const { documentElement } = new DOMParser().parseFromString(
    text.replace(LIVE_NAMES, 'plain:$&'),
    'application/xml',
  );
  const isBroken = documentElement.getElementsByTagName('parsererror').length > 0;
  return isBroken || documentElement.localName === 'parsererror' ? null : documentElement;
};

/**
 * The tree of an SVG text.
 *
 * @param readXml the browser's reader of XML
 * @returns the `svg` element, or why there is none
 */
export function svgRoot(text: string, readXml: XmlReader): SvgNode | FileTrouble {
  // A few entities that hold one another can grow to gigabytes; drawings of rooms do without.
  if (/<!ENTITY/i.test(text))
    return trouble(
      'The SVG file defines abbreviations of its own, which are not read. Save it as plain SVG.',
    );
  const element = readXml(text);
  if (!element)
    return trouble('The SVG file is broken. Save it again, or trace a picture of the plan instead.');
  return (
    plain(element, { elements: MOST_ELEMENTS }, 0) ??
    trouble(
      `The SVG file holds more than ${MOST_ELEMENTS} things. Hide all but walls and tables, and save it again.`,
    )
  );
}
