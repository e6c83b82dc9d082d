/** Sites to each other, bases, and on one day the ways between them in their order; with a scale and north. */
import { useMemo } from 'react';
import type { Coordinates } from '../../../domain/schedule/travel.ts';
import { useUnitSystem } from '../../operations/AppStatus.tsx';
import { frameOf, scaleBarOf } from './mapFrame.ts';
import { BaseMark, dashOf, StopMark, toneOf } from './mapMarks.tsx';
import { placeMapLabels } from './placeMapLabels.ts';
import { type WeekMapModel, wayOf } from './weekMapModel.ts';

const BOX = { width: 760, height: 520, padding: 56 } as const;
const LONGEST_BAR_PX = 160;
const KM_PER_MILE = 1.609344;
/** Of the shipped typeface at this size; a label is only kept clear of others by it. */
const PX_PER_LETTER = 7.6;

export function MapDrawing({
  model,
  isOneDay,
  siteId,
}: {
  readonly model: WeekMapModel;
  readonly isOneDay: boolean;
  /** To be made out among the others. */
  readonly siteId: string | null;
}) {
  const drawn = useMemo(() => draw(model, isOneDay), [model, isOneDay]);
  const unit = useUnitSystem() === 'us' ? { name: 'mi', km: KM_PER_MILE } : { name: 'km', km: 1 };
  if (drawn === null)
    return (
      <p className="lo-faint">None of these sites is on the map yet: give them coordinates under “Edit the site”.</p>
    );
  const { frame, sites, bases, ways } = drawn;
  const bar = scaleBarOf(frame.pxPerKm * unit.km, LONGEST_BAR_PX);
  return (
    <svg
      className="lo-map"
      viewBox={`0 0 ${BOX.width} ${BOX.height}`}
      role="img"
      aria-label={`${sites.length === 1 ? '1 site' : `${sites.length} sites`} seen from above, north at the top. The list beside says the same in words.`}
    >
      {ways.map(({ key, points, style }) => (
        <polyline
          key={key}
          points={points.map(({ x, y }) => `${x},${y}`).join(' ')}
          fill="none"
          stroke={toneOf(style)}
          strokeWidth={2}
          strokeDasharray={dashOf(style)}
          strokeLinejoin="round"
        />
      ))}
      {bases.map(({ at, label, text }) => (
        <g key={text}>
          <BaseMark at={at} />
          <text className="lo-map-label" x={label.x} y={label.y} textAnchor={label.anchor}>
            {text}
          </text>
        </g>
      ))}
      {sites.map(({ key, at, label, text, style }) => (
        <g key={key}>
          {key === siteId ? (
            <circle cx={at.x} cy={at.y} r={14} fill="none" stroke="var(--lo-focus)" strokeWidth={3} />
          ) : null}
          <StopMark at={at} style={style} />
          <text
            className="lo-map-label"
            x={label.x}
            y={label.y}
            textAnchor={label.anchor}
            fontWeight={key === siteId ? 700 : undefined}
          >
            {text}
          </text>
        </g>
      ))}
      <g transform={`translate(24 ${BOX.height - 20})`}>
        <path d={`M0 -6v6h${bar.px}v-6`} fill="none" stroke="var(--lo-ink)" strokeWidth={1.5} />
        <text className="lo-map-label" x={bar.px + 8} y={2}>
          {bar.length} {unit.name}
        </text>
      </g>
      <g transform={`translate(${BOX.width - 28} 24)`}>
        <path d="M0 -12l6 18l-6 -4l-6 4z" fill="var(--lo-ink)" />
        <text className="lo-map-label" y={22} textAnchor="middle">
          N
        </text>
      </g>
    </svg>
  );
}

function draw(model: WeekMapModel, isOneDay: boolean) {
  const sites = sitesOf(model, isOneDay);
  const bases = basesOf(model);
  const frame = frameOf(
    [...sites, ...bases].map(({ place }) => place),
    BOX,
  );
  if (frame === null || sites.length === 0) return null;
  const points = [...sites, ...bases].map(({ place, text }) => ({
    ...frame.pointOf(place),
    widthPx: text.length * PX_PER_LETTER,
  }));
  const labels = placeMapLabels(points);
  const onPaper = <T extends object>(one: T, index: number) => ({
    ...one,
    at: points[index] ?? { x: 0, y: 0 },
    label: labels[index] ?? { x: 0, y: 0, anchor: 'start' as const },
  });
  return {
    frame,
    sites: sites.map(onPaper),
    bases: bases.map((one, index) => onPaper(one, sites.length + index)),
    ways: isOneDay
      ? model.people.flatMap((person) =>
          person.days.map(({ on, stops }) => ({
            key: `${person.staffId} ${on}`,
            style: person.style,
            points: wayOf(person, stops).map(frame.pointOf),
          })),
        )
      : [],
  };
}

type Drawn = {
  readonly key: string;
  readonly place: Coordinates;
  readonly text: string;
  readonly style: number | null;
};

/** Each site once, with who goes there: on one day as which of their stops. */
function sitesOf({ people, unmanned }: WeekMapModel, isOneDay: boolean): readonly Drawn[] {
  const stops = [
    ...people.flatMap((person) => person.days.flatMap((day) => day.stops.map((stop) => ({ person, stop })))),
    ...unmanned.map((stop) => ({ person: null, stop })),
  ];
  return [...Map.groupBy(stops, ({ stop }) => stop.visit.siteId)].flatMap(([key, here]) => {
    const place = here.find(({ stop }) => stop.at !== null)?.stop.at ?? null;
    if (place === null) return [];
    const texts = [...Map.groupBy(here, ({ person }) => person?.initials ?? '?')].map(([initials, list]) =>
      isOneDay && initials !== '?' ? `${initials} ${list.map(({ stop }) => stop.order).join(', ')}` : initials,
    );
    return [{ key, place, text: texts.join(' · '), style: here[0]?.person?.style ?? null }];
  });
}

function basesOf({ people }: WeekMapModel): readonly Omit<Drawn, 'style' | 'key'>[] {
  const withBase = people.flatMap(({ base, initials }) => (base === null ? [] : [{ base, initials }]));
  return [...Map.groupBy(withBase, ({ base }) => `${base.latitude} ${base.longitude}`).values()].flatMap((here) => {
    const [first] = here;
    return first === undefined
      ? []
      : [{ place: first.base, text: `base ${here.map(({ initials }) => initials).join(', ')}` }];
  });
}
