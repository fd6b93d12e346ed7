import { type Affine, apply, compose, shift, stretch, turn } from './affine.ts';
import { type DxfDrawing, type DxfEntity, readDxfDrawing } from './dxf-drawing.ts';
import { dxfEntityShape, numberIn, textIn } from './dxf-entity-shape.ts';
import { unitFromCode } from './length-unit.ts';
import { type DrawnPlan, type FileTrouble, trouble } from './plan-file.ts';
import { createShapeList, type ShapeList } from './shape-list.ts';

/** Blocks within blocks; a block that holds itself ends here. */
const DEEPEST = 6;

/** Types that draw nothing of the room and are passed over without a word. */
const SILENT = new Set(['SEQEND', 'VIEWPORT', 'ATTRIB', 'ATTDEF', 'POINT']);

/** On the sheet rather than in the room (67), or switched off (60). */
const isHidden = (entity: DxfEntity) => numberIn(entity, 67, 0) === 1 || numberIn(entity, 60, 0) === 1;

/** Where an INSERT puts its block: base point to the origin, stretched, turned, moved. */
function placeOf(insert: DxfEntity, head: DxfEntity): Affine {
  const acrossTimes = numberIn(insert, 41, 1);
  const mirror = stretch(numberIn(insert, 230, 1) < 0 ? -1 : 1, 1);
  return [
    shift(numberIn(insert, 10, 0), numberIn(insert, 20, 0)),
    turn(numberIn(insert, 50, 0)),
    stretch(acrossTimes, numberIn(insert, 42, acrossTimes)),
    shift(-numberIn(head, 10, 0), -numberIn(head, 20, 0)),
  ].reduce(compose, mirror);
}

function gather(
  drawing: DxfDrawing,
  entities: readonly DxfEntity[],
  place: Affine,
  depth: number,
  list: ShapeList,
): void {
  for (const entity of entities) {
    if (!list.goOn()) return;
    if (isHidden(entity) || SILENT.has(entity.type)) continue;
    const block = entity.type === 'INSERT' ? drawing.blocks.get(textIn(entity, 2)) : undefined;
    if (block && depth < DEEPEST) {
      gather(drawing, block.entities, compose(place, placeOf(entity, block.head)), depth + 1, list);
      continue;
    }
    const shape = dxfEntityShape(entity);
    if (!shape) list.leaveOut();
    else
      list.add(
        shape.outline.map((spot) => apply(place, spot)),
        shape.closed,
        textIn(entity, 8),
      );
  }
}

/**
 * A DXF drawing as shapes, in its own units, with y turned to run down the plan.
 *
 * @param text the file as text
 * @returns shapes, or why there are none
 */
export function shapesFromDxf(text: string): DrawnPlan | FileTrouble {
  const drawing = readDxfDrawing(text);
  if (drawing.problem) return trouble(drawing.problem);
  const list = createShapeList();
  gather(drawing, drawing.entities, stretch(1, -1), 0, list);
  return list.plan(unitFromCode(drawing.unitCode));
}
