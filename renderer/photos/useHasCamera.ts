/** Whether this laptop has a camera: where there is none, none is offered. One that is plugged in later is noticed. */
import { useEffect, useState } from 'react';

export function useHasCamera(): boolean {
  const [hasCamera, setHasCamera] = useState(false);
  useEffect(() => {
    const devices = (navigator as { readonly mediaDevices?: MediaDevices }).mediaDevices;
    if (devices === undefined) return undefined;
    let isWanted = true;
    const look = async () => {
      const all = await devices.enumerateDevices().catch(() => []);
      if (isWanted) setHasCamera(all.some(({ kind }) => kind === 'videoinput'));
    };
    void look();
    const again = () => void look();
    devices.addEventListener('devicechange', again);
    return () => {
      isWanted = false;
      devices.removeEventListener('devicechange', again);
    };
  }, []);
  return hasCamera;
}
