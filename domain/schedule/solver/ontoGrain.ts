/** Starts on the wished grain and to the minute: from one to the other in a plan that exists. Both change `state`. */
import { type RouteState, refreshRoute } from './routeState.ts';
import { isAlsoToTheMinute, type RoutingModel } from './routingModel.ts';

/** Starts to the minute that are possible on the grain with who goes where as it is. */
export function ontoGrain(model: RoutingModel, state: RouteState): void {
  for (let visit = 0; visit < model.firstStay; visit += 1) {
    const option = state.optionOf[visit] as number;
    if (option < 0 || (model.optionOffGrain[option] as number) === 0) continue;
    const route = state.routeOf[visit] as number;
    state.optionOf[visit] = option - 1;
    if (refreshRoute(model, state, route)) continue;
    state.optionOf[visit] = option;
    refreshRoute(model, state, route);
  }
}

/** Every start to the minute that has the choice. */
export function offGrain(model: RoutingModel, state: RouteState): void {
  for (let visit = 0; visit < model.firstStay; visit += 1) {
    const option = state.optionOf[visit] as number;
    if (option >= 0 && isAlsoToTheMinute(model, option)) state.optionOf[visit] = option + 1;
  }
  for (let route = 0; route < model.routeCount; route += 1) refreshRoute(model, state, route);
}
