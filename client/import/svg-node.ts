/** An element of an SVG drawing, without anything that could act: plain names, texts and children. */
export interface SvgNode {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly SvgNode[];
}
