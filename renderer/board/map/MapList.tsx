/** The visits of the map in words, in the order in which they are made; what is not on the map says so, and leads to where that is mended. */
import { moveByArrows } from '../../kit/arrowKeys.ts';
import { clockWords, dayWords } from '../../kit/dayWords.ts';
import { RouteLink } from '../../RouteLink.tsx';
import { PersonSwatch } from './mapMarks.tsx';
import type { MapStop, WeekMapModel } from './weekMapModel.ts';

type OnSite = (siteId: string | null) => void;

export function MapList({
  model: { people, unmanned },
  isOneDay,
  onSite,
}: {
  readonly model: WeekMapModel;
  readonly isOneDay: boolean;
  readonly onSite: OnSite;
}) {
  const stops = [...people.flatMap((person) => person.days.flatMap((day) => day.stops)), ...unmanned];
  const missing = [
    ...new Map(stops.filter(({ at }) => at === null).map(({ visit }) => [visit.siteId, visit])).values(),
  ];
  return (
    <section
      className="lo-map-list"
      aria-label="The visits of the map, in their order"
      onKeyDown={(event) => moveByArrows(event)}
    >
      {people.map((person) => (
        <div key={person.staffId}>
          <h3>
            <PersonSwatch style={person.style} /> {person.name} ({person.initials})
          </h3>
          {person.days.map(({ on, stops: ofDay }) => (
            <div key={on}>
              {isOneDay ? null : <h4>{dayWords(on, { weekday: true })}</h4>}
              <Stops stops={ofDay} onSite={onSite} />
            </div>
          ))}
        </div>
      ))}
      {unmanned.length === 0 ? null : (
        <div>
          <h3>
            <PersonSwatch style={null} /> Nobody yet (?)
          </h3>
          <Stops stops={unmanned} onSite={onSite} />
        </div>
      )}
      {missing.length === 0 ? null : (
        <div>
          <h3>Not on the map</h3>
          <ul>
            {missing.map(({ siteId, street, city }) => (
              <li key={siteId}>
                <RouteLink to="edit-site" params={{ siteId }}>
                  Give {street}, {city} its coordinates
                </RouteLink>
              </li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}

function Stops({ stops, onSite }: { readonly stops: readonly MapStop[]; readonly onSite: OnSite }) {
  return (
    <ol>
      {stops.map(({ visit, startMin, at }) => (
        <li
          key={visit.visitId}
          onFocus={() => onSite(visit.siteId)}
          onBlur={() => onSite(null)}
          onMouseEnter={() => onSite(visit.siteId)}
          onMouseLeave={() => onSite(null)}
        >
          <RouteLink to="visit" params={{ visitId: visit.visitId }}>
            {startMin === null ? 'any time' : clockWords(startMin)} {visit.customerName}
          </RouteLink>
          <div className="lo-faint">
            {visit.street}, {visit.city}
            {at === null ? ': not on the map' : ''}
          </div>
        </li>
      ))}
    </ol>
  );
}
