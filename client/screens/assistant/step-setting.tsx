import { useSignal } from '@preact/signals';
import type { Units } from '../../../shared/document/schema.ts';
import { Stepper } from '../../parts/stepper/index.tsx';
import { rememberedStep, rememberStep } from '../../session/own-step.ts';

/** How long this person's step is: a wall of known length, walked once and divided, is the best way to find out. */
export function StepSetting({ units }: { units: Units }) {
  const stepM = useSignal(rememberedStep());
  const change = (byM: number) => {
    const next = Math.round(Math.min(1.2, Math.max(0.3, stepM.peek() + byM)) * 100) / 100;
    stepM.value = next;
    rememberStep(next);
  };
  return (
    <>
      <Stepper
        name="My step, one footfall"
        value={
          units === 'metric'
            ? `${Math.round(stepM.value * 100)} cm`
            : `${Math.round(stepM.value / 0.0254)} in`
        }
        less={() => change(-0.05)}
        more={() => change(0.05)}
      />
      <p class="quiet">Walk a wall of known length with the stand in your hand, and divide by your steps.</p>
    </>
  );
}
