/** The left column: where one can go, who is working, and how to hand over to somebody else. */
import { Button, Stack } from '@mantine/core';
import { useEffect, useRef } from 'react';
import { BrandMark } from '../kit/BrandMark.tsx';
import { useSignedIn } from '../operations/AppStatus.tsx';
import { RouteLink } from '../RouteLink.tsx';
import { goTo, usePlace } from '../route.ts';
import { useShortcut, useShortcuts } from '../shortcuts/Shortcuts.tsx';
import { PLACES, type PlaceEntry } from './places.ts';
import { SWITCH_KEY, useSwitchPerson } from './useSwitchPerson.ts';

export function SideColumn() {
  const here = usePlace().screen;
  const person = useSignedIn();
  const { switchPerson, isBusy } = useSwitchPerson();
  const { showList } = useShortcuts();
  return (
    <aside className="lo-side" aria-label="Places and person">
      <div className="lo-brand">
        <BrandMark />
        Lightoff
      </div>
      <nav aria-label="Main">
        <ul>
          {PLACES.filter(({ onlyFor }) => onlyFor?.some((role) => person.roles.includes(role)) ?? true).map((place) => (
            <PlaceLink
              key={place.screen}
              place={place}
              isCurrent={here === place.screen || place.holds.some((screen) => screen === here)}
            />
          ))}
        </ul>
      </nav>
      <div className="lo-side-foot">
        <div style={{ fontWeight: 600 }}>{person.name}</div>
        <Stack gap="xs" mt="xs">
          <Button variant="default" aria-keyshortcuts={SWITCH_KEY} onClick={switchPerson} loading={isBusy}>
            Switch person
          </Button>
          <Button variant="subtle" onClick={showList}>
            Keys (?)
          </Button>
        </Stack>
      </div>
    </aside>
  );
}

function PlaceLink({ place, isCurrent }: { readonly place: PlaceEntry; readonly isCurrent: boolean }) {
  useShortcut(`g ${place.key}`, `Go to ${place.label}`, () => goTo(place.screen, {}));
  const item = useRef<HTMLLIElement>(null);
  // On a low screen the last places stand below its edge.
  useEffect(() => {
    if (isCurrent) item.current?.scrollIntoView({ block: 'nearest' });
  }, [isCurrent]);
  return (
    <li ref={item}>
      <RouteLink to={place.screen} params={{}} className="" isCurrent={isCurrent}>
        {place.label}
      </RouteLink>
    </li>
  );
}
