import { useSignal } from '@preact/signals';
import { useState } from 'preact/hooks';
import type { Entry } from '../../../shared/document/schema.ts';
import { LENGTH_UNITS, type LengthUnit, metresPer } from '../../import/length-unit.ts';
import type { DrawnPlan, PlanFile } from '../../import/plan-file.ts';
import { roomFromShapes } from '../../import/room-from-shapes.ts';
import { Choice } from '../../parts/choice/index.tsx';
import { FileKey } from '../../parts/file-key/index.tsx';
import type { EditorState } from './editor-state.ts';
import { BackKey } from './keys-card.tsx';
import { featureFrom } from './named-kind.ts';
import { takeOutline } from './take-outline.ts';
import { TraceCard } from './trace-card.tsx';

/** A drawing with lengths: its unit is asked where it does not say, and its largest outline is the room. */
function Drawn({ state, plan }: { state: EditorState; plan: DrawnPlan }) {
  const unit = useSignal<LengthUnit | null>(plan.unit);
  const found = unit.value ? roomFromShapes(plan.shapes, metresPer(unit.value)) : null;
  const take = () => {
    if (!found || 'reason' in found) return;
    const features: Entry<'feature'>[] = [];
    for (const feature of found.features) features.push(featureFrom(feature, features));
    const outcome = takeOutline(state, found.outline, features);
    if (state.say(outcome, `A room with ${features.length} things. Undo brings the old one back.`))
      state.card.value = 'list';
  };
  return (
    <>
      <Choice
        name={
          plan.unit ? 'The file says its lengths are in' : 'The file does not say what its lengths are in'
        }
        options={LENGTH_UNITS}
        value={unit.value}
        choose={(value) => {
          unit.value = value;
        }}
      />
      {found && 'reason' in found && <p role="alert">{found.reason}</p>}
      {found && !('reason' in found) && (
        <>
          <p role="status">{`${found.words}.`}</p>
          <button type="button" class="main-key" onClick={take}>
            Use this room
          </button>
        </>
      )}
    </>
  );
}

/** A plan from a file or a photo of the venue's own. The file stays on this phone. */
export function ImportCard({ state }: { state: EditorState }) {
  const [file, setFile] = useState<PlanFile | null>(null);
  const [busy, setBusy] = useState(false);
  const choose = async (chosen: File) => {
    setBusy(true);
    setFile(null);
    const { readPlanFile } = await import('../../import/read-plan-file.ts');
    setFile(await readPlanFile(chosen));
    setBusy(false);
  };
  return (
    <div class="editor-card">
      <FileKey
        word="Choose a photo, PDF, DXF or SVG"
        accept="image/*,.pdf,.dxf,.svg"
        take={(chosen) => void choose(chosen)}
      />
      {busy && <p role="status">Reading the file …</p>}
      {file?.kind === 'trouble' && <p role="alert">{file.reason}</p>}
      {file?.kind === 'shapes' && <Drawn state={state} plan={file} />}
      {file?.kind === 'picture' && <TraceCard state={state} picture={file} />}
      {file?.kind !== 'picture' && <BackKey state={state} />}
    </div>
  );
}
