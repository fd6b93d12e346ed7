import type { LeadState } from './lead-state.ts';

/** How far the room's light is: being worked out, ready, or why it cannot be. */
export function ReadinessLine({ state }: { state: LeadState }) {
  const readiness = state.light.readiness.value;
  const trouble = state.light.trouble.value;
  if (trouble) {
    return (
      <p role="alert" class="trouble">
        {`${trouble} The numbers shown are the last that could be worked out.`}
      </p>
    );
  }
  if (readiness.kind === 'ready') return null;
  const percent = Math.round(readiness.part * 100);
  return (
    <p role="status" class="readiness">
      <progress value={percent} max={100} />
      {`Working out how this room sends light back: ${percent} %`}
    </p>
  );
}
