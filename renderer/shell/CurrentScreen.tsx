/** The screen that belongs to the current place. */
import { Screen } from '../kit/Screen.tsx';
import { RouteLink } from '../RouteLink.tsx';
import { usePlace } from '../route.ts';

export function CurrentScreen() {
  const place = usePlace();
  switch (place.screen) {
    default:
      return (
        <Screen title="Nothing here">
          <p>
            This address leads nowhere.{' '}
            <RouteLink to="today" params={{}}>
              Go to Today
            </RouteLink>
          </p>
        </Screen>
      );
  }
}
