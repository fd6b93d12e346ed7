/** Whether something was switched on on this phone. */
export function remembered(key: string): boolean {
  try {
    return localStorage.getItem(key) === 'on';
  } catch {
    return false;
  }
}

/** Keeps on this phone that something is switched on, or off. */
export function remember(key: string, on: boolean): void {
  try {
    localStorage.setItem(key, on ? 'on' : 'off');
  } catch {
    // It holds for this page, then.
  }
}
