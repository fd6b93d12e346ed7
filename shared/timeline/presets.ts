/** Which of the usual moments an entry is, so that a look can be proposed for it. */
export type UsualMoment =
  | 'entrances'
  | 'first dance'
  | 'parent dances'
  | 'dinner'
  | 'toasts'
  | 'cake'
  | 'open dancing'
  | 'exit';

export interface PresetMoment {
  readonly name: string;
  /** After the beginning of the evening. */
  readonly afterMin: number;
  readonly usual: UsualMoment;
}

/** A usual evening to begin a running order with. */
export interface EveningPreset {
  readonly id: 'dances-first' | 'dinner-first' | 'short-evening';
  readonly title: string;
  /** What sets it apart, in one sentence. */
  readonly about: string;
  readonly moments: readonly PresetMoment[];
}

/** Own choice, after evenings as they usually run (common practice): a start to change, not a rule. */
export const EVENING_PRESETS: readonly EveningPreset[] = [
  {
    id: 'dances-first',
    title: 'Dances before dinner',
    about: 'The couple walk in and dance at once; the floor opens after the cake.',
    moments: [
      { name: 'Entrances', afterMin: 0, usual: 'entrances' },
      { name: 'First dance', afterMin: 10, usual: 'first dance' },
      { name: 'Parent dances', afterMin: 15, usual: 'parent dances' },
      { name: 'Dinner', afterMin: 30, usual: 'dinner' },
      { name: 'Toasts', afterMin: 90, usual: 'toasts' },
      { name: 'Cake', afterMin: 120, usual: 'cake' },
      { name: 'Open dancing', afterMin: 135, usual: 'open dancing' },
      { name: 'Exit', afterMin: 270, usual: 'exit' },
    ],
  },
  {
    id: 'dinner-first',
    title: 'Dinner before the dances',
    about: 'Toasts between the courses; the first dance opens the floor, and the cake comes late.',
    moments: [
      { name: 'Entrances', afterMin: 0, usual: 'entrances' },
      { name: 'First course', afterMin: 15, usual: 'dinner' },
      { name: 'Toasts', afterMin: 45, usual: 'toasts' },
      { name: 'Main course', afterMin: 75, usual: 'dinner' },
      { name: 'First dance', afterMin: 150, usual: 'first dance' },
      { name: 'Parent dances', afterMin: 155, usual: 'parent dances' },
      { name: 'Open dancing', afterMin: 165, usual: 'open dancing' },
      { name: 'Late cake', afterMin: 240, usual: 'cake' },
      { name: 'Dancing again', afterMin: 255, usual: 'open dancing' },
      { name: 'Exit', afterMin: 360, usual: 'exit' },
    ],
  },
  {
    id: 'short-evening',
    title: 'A short evening',
    about: 'Standing supper, no parent dances, everybody home early.',
    moments: [
      { name: 'Entrances', afterMin: 0, usual: 'entrances' },
      { name: 'Toasts', afterMin: 20, usual: 'toasts' },
      { name: 'Cake', afterMin: 60, usual: 'cake' },
      { name: 'First dance', afterMin: 75, usual: 'first dance' },
      { name: 'Open dancing', afterMin: 80, usual: 'open dancing' },
      { name: 'Exit', afterMin: 180, usual: 'exit' },
    ],
  },
];
