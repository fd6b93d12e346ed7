/**
 * Vibration and sound are extras: neither can be relied on (no vibration on some phones, a "true" that does
 * nothing on others, music louder than any phone), so nothing that matters waits for them.
 */
export const BUZZ = {
  newCall: [600, 200, 600],
  changed: [200, 100, 200, 100, 200],
  acknowledged: [80],
} as const;

let audio: AudioContext | null = null;

/** Call inside a tap: browsers let a page sound only after one. */
export function unlockSound(): void {
  try {
    audio ??= new AudioContext();
    void audio.resume();
  } catch {
    audio = null;
  }
}

function tone(atS: number, frequencyHz: number, lengthS: number): void {
  if (audio?.state !== 'running') return;
  const oscillator = audio.createOscillator();
  const gain = audio.createGain();
  oscillator.frequency.value = frequencyHz;
  gain.gain.setValueAtTime(0.0001, audio.currentTime + atS);
  gain.gain.exponentialRampToValueAtTime(0.3, audio.currentTime + atS + 0.02);
  gain.gain.exponentialRampToValueAtTime(0.0001, audio.currentTime + atS + lengthS);
  oscillator.connect(gain).connect(audio.destination);
  oscillator.start(audio.currentTime + atS);
  oscillator.stop(audio.currentTime + atS + lengthS);
}

/** Buzzes and, in an earpiece, sounds. */
export function buzz(pattern: keyof typeof BUZZ): void {
  navigator.vibrate?.([...BUZZ[pattern]]);
  if (pattern === 'acknowledged') {
    tone(0, 880, 0.08);
    return;
  }
  tone(0, 660, 0.18);
  tone(0.25, pattern === 'newCall' ? 880 : 550, 0.25);
}
