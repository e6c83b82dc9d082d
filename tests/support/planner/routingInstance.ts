/** A published routing instance as the search takes it: one day, interchangeable or own homes, distance only. */
import type { RoutingModel } from '../../../domain/schedule/solver/routingModel.ts';

export type InstanceVisit = {
  readonly x: number;
  readonly y: number;
  readonly demand: number;
  readonly ready: number;
  /** Latest start. */
  readonly due: number;
  readonly service: number;
  readonly skills: readonly number[];
};

export type InstanceVehicle = {
  readonly x: number;
  readonly y: number;
  readonly start: number;
  readonly end: number;
  readonly skills: readonly number[];
};

export type RoutingInstance = {
  readonly visits: readonly InstanceVisit[];
  readonly vehicles: readonly InstanceVehicle[];
  readonly capacity: number;
  /** Distances are multiplied by this and made whole. */
  readonly scale: number;
  readonly toWhole: (scaled: number) => number;
};

export function routingModelOf(instance: RoutingInstance): RoutingModel {
  const { visits, vehicles, scale } = instance;
  const homes = [...new Map(vehicles.map((one) => [`${one.x} ${one.y}`, one])).values()];
  const homeNumber = new Map(homes.map((one, index) => [`${one.x} ${one.y}`, visits.length + index]));
  const points = [...visits, ...homes];
  const travel = points.flatMap((from) =>
    points.map((to) => instance.toWhole(scale * Math.hypot(from.x - to.x, from.y - to.y))),
  );
  const options = visits.map((visit) =>
    vehicles.flatMap((vehicle, route) =>
      visit.skills.every((skill) => vehicle.skills.includes(skill))
        ? [{ route, from: visit.ready * scale, to: visit.due * scale }]
        : [],
    ),
  );
  const flat = options.flat();
  const kinds = vehicles.map((one) => JSON.stringify(one));
  const none = new Float64Array(visits.length);
  return {
    visitCount: visits.length,
    firstStay: visits.length,
    routeCount: vehicles.length,
    placeCount: points.length,
    technicianCount: vehicles.length,
    travel: Int32Array.from(travel),
    visitPlace: Int32Array.from(visits, (_, index) => index),
    duration: Int32Array.from(visits, (visit) => visit.service * scale),
    mayPause: new Uint8Array(visits.length),
    load: Int32Array.from(visits, (visit) => visit.demand),
    routeHome: Int32Array.from(vehicles, (one) => homeNumber.get(`${one.x} ${one.y}`) ?? 0),
    routeStart: Int32Array.from(vehicles, (one) => one.start * scale),
    routeEnd: Int32Array.from(vehicles, (one) => one.end * scale),
    routeOrdinaryEnd: Int32Array.from(vehicles, (one) => one.end * scale),
    routeCapacity: new Int32Array(vehicles.length).fill(instance.capacity),
    routeDay: new Int32Array(vehicles.length),
    routeTechnician: Int32Array.from(vehicles, (_, index) => index),
    routeKind: Int32Array.from(kinds, (kind) => kinds.indexOf(kind)),
    breakIndex: new Int32Array(vehicles.length + 1),
    breakFrom: new Int32Array(0),
    breakTo: new Int32Array(0),
    optionIndex: offsets(options.map((list) => list.length)),
    optionRoute: Int32Array.from(flat, (option) => option.route),
    optionFrom: Int32Array.from(flat, (option) => option.from),
    optionTo: Int32Array.from(flat, (option) => option.to),
    optionGrain: new Int32Array(flat.length).fill(1),
    optionOffGrain: new Float64Array(flat.length),
    optionS2: new Float64Array(flat.length),
    optionS3: new Float64Array(flat.length),
    optionS4: new Float64Array(flat.length),
    optionW: new Float64Array(flat.length),
    optionPenalty: new Float64Array(flat.length),
    after: new Int32Array(visits.length).fill(-1),
    dependentIndex: new Int32Array(visits.length + 1),
    dependent: new Int32Array(0),
    pressing: new Int32Array(visits.length),
    outS1: new Float64Array(visits.length).fill(1),
    outS2: none,
    outS3: none,
    outS4: none,
    isMovable: new Uint8Array(visits.length).fill(1),
    countsTime: false,
  };
}

function offsets(counts: readonly number[]): Int32Array {
  const index = new Int32Array(counts.length + 1);
  counts.forEach((count, at) => {
    index[at + 1] = (index[at] as number) + count;
  });
  return index;
}

/** Routes as lists of visit numbers from 0; empty ones left out. */
export function routesOf(model: RoutingModel, next: Int32Array): readonly (readonly number[])[] {
  const routes: number[][] = [];
  for (let route = 0; route < model.routeCount; route += 1) {
    const order: number[] = [];
    const end = model.visitCount + model.routeCount + route;
    for (let node = next[model.visitCount + route] as number; node !== end; node = next[node] as number)
      order.push(node);
    routes.push(order);
  }
  return routes;
}

/**
 * The length of a set of routes, one per vehicle in order; null when a rule of the instance is broken. Reads the instance
 * itself and nothing of the search.
 */
export function checkedLength(instance: RoutingInstance, routes: readonly (readonly number[])[]): number | null {
  const { scale, toWhole } = instance;
  const seen = new Set<number>();
  let length = 0;
  if (routes.length > instance.vehicles.length) return null;
  for (const [index, route] of routes.entries()) {
    const vehicle = instance.vehicles[index];
    if (vehicle === undefined) return null;
    if (route.length === 0) continue;
    let time = vehicle.start * scale;
    let carried = 0;
    let from: { readonly x: number; readonly y: number } = vehicle;
    for (const number of route) {
      const visit = instance.visits[number];
      if (visit === undefined || seen.has(number)) return null;
      if (!visit.skills.every((skill) => vehicle.skills.includes(skill))) return null;
      seen.add(number);
      const leg = toWhole(scale * Math.hypot(from.x - visit.x, from.y - visit.y));
      length += leg;
      time = Math.max(time + leg, visit.ready * scale);
      if (time > visit.due * scale) return null;
      time += visit.service * scale;
      carried += visit.demand;
      from = visit;
    }
    const back = toWhole(scale * Math.hypot(from.x - vehicle.x, from.y - vehicle.y));
    length += back;
    if (time + back > vehicle.end * scale || carried > instance.capacity) return null;
  }
  return seen.size === instance.visits.length ? length : null;
}
