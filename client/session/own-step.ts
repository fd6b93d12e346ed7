import { DEFAULT_STEP_M } from '../../core/guidance/steps.ts';

const KEY = 'hushmark/step';

/** The length of this person's step in metres, as set on this phone. */
export function rememberedStep(): number {
  try {
    const kept = Number(localStorage.getItem(KEY));
    return kept >= 0.3 && kept <= 1.2 ? kept : DEFAULT_STEP_M;
  } catch {
    return DEFAULT_STEP_M;
  }
}

/** Keeps the length of this person's step on this phone. */
export function rememberStep(stepM: number): void {
  try {
    localStorage.setItem(KEY, String(stepM));
  } catch {
    // Without storage the step is asked for again the next time.
  }
}
