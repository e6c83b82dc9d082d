/** The store is open: there is nothing to rescue. What is answered while it is not stands in `answerRescue.ts`. */
import { fail, type Handlers } from './handler.ts';

export const rescueHandlers: Handlers<'rescue.look' | 'rescue.restore'> = {
  'rescue.look': () => fail('store-is-open', {}),
  'rescue.restore': () => fail('store-is-open', {}),
};
