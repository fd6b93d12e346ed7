/** One value of a DXF file with the number that says what it means (DXF reference, group codes). */
export interface DxfGroup {
  readonly code: number;
  readonly value: string;
}

/** One thing drawn: its type, its values, and the corners that follow an old-style polyline. */
export interface DxfEntity {
  readonly type: string;
  readonly groups: DxfGroup[];
  readonly vertices: DxfEntity[];
}

/** A DXF file taken apart. */
export interface DxfDrawing {
  /** `$INSUNITS` as it is written; null when the file has none. */
  readonly unitCode: number | null;
  readonly entities: readonly DxfEntity[];
  /** Drawings within the drawing, by name, put in place by INSERT. */
  readonly blocks: ReadonlyMap<string, { readonly head: DxfEntity; readonly entities: readonly DxfEntity[] }>;
  /** Why the file cannot be trusted to be whole, in plain words; null when it can. */
  readonly problem: string | null;
}

const TORN = 'The drawing file breaks off in the middle. Copy it to this phone again.';

/** Walks over the pairs of lines; null at the end, and `problem` then says whether it was a good one. */
function openGroups(text: string): { next: () => DxfGroup | null; problem: () => string | null } {
  let at = 0;
  let line = 0;
  let problem: string | null = null;
  let isOver = false;
  const nextLine = (): string | null => {
    if (at >= text.length) return null;
    const end = text.indexOf('\n', at);
    const cut = end < 0 ? text.length : end;
    const read = text.slice(at, cut).trim();
    at = cut + 1;
    line++;
    return read;
  };
  const stop = (said: string | null): null => {
    isOver = true;
    problem = said;
    return null;
  };
  return {
    problem: () => problem,
    next: () => {
      if (isOver) return null;
      const code = nextLine();
      const value = nextLine();
      if (code === null || value === null) return stop(TORN);
      if (!/^-?\d{1,5}$/.test(code))
        return stop(`Line ${line - 1} of the drawing file should hold a number. Save it as DXF again.`);
      if (code === '0' && value === 'EOF') return stop(null);
      return { code: Number(code), value };
    },
  };
}

/** A drawing may use either line ending, or the old one alone. */
const withPlainLineEnds = (text: string) => (text.includes('\n') ? text : text.replaceAll('\r', '\n'));

/**
 * Takes a text DXF file apart: units, things drawn, blocks. Everything else in it is passed over. Written here because the
 * parser at hand goes round for ever on a polyline that is not ended, which would take the page with it.
 */
export function readDxfDrawing(text: string): DxfDrawing {
  const groups = openGroups(withPlainLineEnds(text));
  const entities: DxfEntity[] = [];
  const blocks = new Map<string, { head: DxfEntity; entities: DxfEntity[] }>();
  let unitCode: number | null = null;
  let section = '';
  let variable = '';
  let block: { head: DxfEntity; entities: DxfEntity[] } | null = null;
  let current: DxfEntity | null = null;
  let polyline: DxfEntity | null = null;
  const begin = (type: string) => {
    current = { type, groups: [], vertices: [] };
    if (type === 'VERTEX' && polyline) {
      polyline.vertices.push(current);
      return;
    }
    polyline = type === 'POLYLINE' ? current : null;
    if (type === 'BLOCK') block = { head: current, entities: [] };
    else if (type === 'ENDBLK') block = null;
    else if (section === 'ENTITIES') entities.push(current);
    else if (section === 'BLOCKS') block?.entities.push(current);
  };
  for (let group = groups.next(); group; group = groups.next()) {
    const { code, value } = group;
    if (code === 0) {
      current = null;
      if (value === 'SECTION') section = '?';
      else if (value === 'ENDSEC') section = '';
      else if (section === 'ENTITIES' || section === 'BLOCKS') begin(value);
    } else if (section === '?' && code === 2) section = value;
    else if (section === 'HEADER') {
      if (code === 9) variable = value;
      else if (variable === '$INSUNITS' && code === 70) unitCode = Number.parseInt(value, 10);
    } else if (current) {
      (current as DxfEntity).groups.push(group);
      const open = block as { head: DxfEntity; entities: DxfEntity[] } | null;
      if (open && current === open.head && code === 2) blocks.set(value, open);
    }
  }
  return { unitCode: Number.isNaN(unitCode) ? null : unitCode, entities, blocks, problem: groups.problem() };
}
