import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import './style.css';

/**
 * A component whose code is fetched when it is first shown: what is not needed at the door must not keep anyone
 * waiting there.
 */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  let loaded: ComponentType<Props> | null = null;
  return function Later(props: Props) {
    const [Shown, setShown] = useState<ComponentType<Props> | null>(() => loaded);
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      if (Shown) return;
      load().then(
        (component) => {
          loaded = component;
          setShown(() => component);
        },
        () => setFailed(true),
      );
    }, []);
    if (Shown) return <Shown {...props} />;
    return (
      <p class="later" role="status">
        {failed
          ? 'This part of the app cannot be fetched: is this phone on the server’s Wi-Fi?'
          : 'Opening …'}
      </p>
    );
  };
}
