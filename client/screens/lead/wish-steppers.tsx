import { lengthLabel } from '../../../core/units/length.ts';
import { powerLabel } from '../../../core/units/power.ts';
import { setCameraLight, setWish } from '../../../shared/document/commands/change-moment.ts';
import type { Entry } from '../../../shared/document/schema.ts';
import { Choice } from '../../parts/choice/index.tsx';
import { Stepper } from '../../parts/stepper/index.tsx';
import { stopsWords } from '../../words/light-words.ts';
import type { LeadState } from './lead-state.ts';
import { sayDone } from './say-done.ts';

type WishField = keyof Entry<'moment/wish'>;

const WISHES: readonly (readonly [WishField, string, number, 'stops' | 'm'])[] = [
  ['subjectStops', 'Subject', 1 / 3, 'stops'],
  ['backgroundStops', 'Background', 1 / 2, 'stops'],
  ['rimStops', 'Rim', 1 / 3, 'stops'],
  ['groupWidthM', 'Group, how wide', 1 / 2, 'm'],
];

const CAMERA_USES: readonly (readonly [Entry<'moment/camera-light'>['use'], string])[] = [
  ['off', 'Off'],
  ['direct', 'Straight'],
  ['card', 'Card'],
  ['bounce', 'To the ceiling'],
];

/** What the lead wants the picture to look like; the wanted powers follow from it. */
export function WishSteppers({ state }: { state: LeadState }) {
  const { doc, hand, night } = state.session;
  const moment = night.value?.moment;
  if (!moment) return null;
  const { wish } = moment;
  const step = (field: keyof typeof wish, by: number) => {
    const next = { ...wish, [field]: Math.round((wish[field] + by) * 6) / 6 };
    sayDone(state, setWish(doc, hand, moment.id, next), 'Changed.', () =>
      setWish(doc, hand, moment.id, wish),
    );
  };
  return (
    <>
      {WISHES.map(([field, name, by, unit]) => (
        <Stepper
          key={field}
          name={name}
          value={
            unit === 'stops'
              ? stopsWords(wish[field])
              : lengthLabel(wish[field], night.value?.units ?? 'metric')
          }
          less={() => step(field, -by)}
          more={() => step(field, by)}
        />
      ))}
    </>
  );
}

/** How the flash on the camera is used in this moment, and at which power. */
export function CameraFlash({ state }: { state: LeadState }) {
  const { doc, hand, night } = state.session;
  const moment = night.value?.moment;
  if (!moment || !night.value?.cameraKit) return null;
  const { cameraLight } = moment;
  const set = (next: typeof cameraLight) =>
    sayDone(state, setCameraLight(doc, hand, moment.id, next), 'Flash on the camera changed.', () =>
      setCameraLight(doc, hand, moment.id, cameraLight),
    );
  const power = (by: number) =>
    set({ ...cameraLight, powerStops: Math.max(-10, Math.min(0, cameraLight.powerStops + by)) });
  return (
    <>
      <Choice
        name="Flash on the camera"
        options={CAMERA_USES}
        value={cameraLight.use}
        choose={(use) => set({ ...cameraLight, use })}
      />
      {cameraLight.use !== 'off' && (
        <Stepper
          name="Its power"
          value={powerLabel(cameraLight.powerStops)}
          less={() => power(-1 / 3)}
          more={() => power(1 / 3)}
        />
      )}
    </>
  );
}
