/** An age as a person says it: "4 s", "3 min", "2 h". Never negative: clocks may differ by a little. */
export function ageWords(ageMs: number): string {
  const seconds = Math.max(0, Math.round(ageMs / 1000));
  if (seconds < 100) return `${seconds} s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 100) return `${minutes} min`;
  return `${Math.round(minutes / 60)} h`;
}
