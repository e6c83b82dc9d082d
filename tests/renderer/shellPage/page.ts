/** A page with nothing but the window's real transport, for the tests that ask how page and host get on. */
import { connect } from '../../../renderer/transport/connect.ts';
import { fromTagged, toTagged } from '../../support/taggedJson.ts';

const transport = connect();
const heard = {
  topics: [] as (readonly string[])[],
  states: [transport.connection()] as string[],
  violations: [] as string[],
};
transport.onChanged((topics) => heard.topics.push(topics));
transport.onConnection((state) => heard.states.push(state));
document.addEventListener('securitypolicyviolation', (event) => heard.violations.push(event.effectiveDirective));

/** One text in, one text out: the test names what it wants. */
async function probe(text: string): Promise<string> {
  const { what, args } = fromTagged(text) as { readonly what: string; readonly args: readonly [never, never] };
  return toTagged(await answer(what, args));
}

function answer(what: string, [first, second]: readonly [never, never]): unknown {
  switch (what) {
    case 'call':
      return transport.call(first, second);
    case 'putFile':
      return transport.putFile(first);
    case 'getFile':
      return transport.getFile(first);
    case 'heard':
      return heard;
    case 'globals':
      return ['require', 'process', 'module', 'Buffer', 'ipcRenderer', 'electron'].filter((name) => name in window);
    case 'bridge':
      return describeBridge();
    case 'address':
      return window.location.href;
    case 'stored':
      return Object.fromEntries(Object.keys(sessionStorage).map((key) => [key, sessionStorage.getItem(key)]));
    case 'go':
      window.location.href = first;
      return null;
    case 'open':
      return window.open(first) === null;
    case 'tryInline':
      return tryInline();
    case 'tryEval':
      return tryEval();
    case 'tryFetch':
      return fetch(first).then(
        () => 'fetched',
        () => 'refused',
      );
    case 'tryFrame':
      return tryFrame(first);
    default:
      throw new Error(`no such question: ${what}`);
  }
}

function describeBridge() {
  const bridge = (window as { lightoff?: { connect: unknown } }).lightoff;
  if (bridge === undefined) return null;
  const was = bridge.connect;
  const refusals = [
    refuses(() => Object.assign(bridge, { connect: () => 'mine' })),
    refuses(() => Object.assign(bridge, { more: 1 })),
    refuses(() => Object.assign(window, { lightoff: {} })),
  ];
  return { names: Object.keys(bridge), isUnchanged: bridge.connect === was, refusals };
}

function refuses(act: () => unknown): boolean {
  try {
    act();
    return false;
  } catch {
    return true;
  }
}

/** Later, not at once: while a debugger's question runs, the browser lets code be built from strings. */
function tryEval(): Promise<string> {
  return new Promise((resolve) => {
    setTimeout(() => resolve(refuses(() => new Function('return 1')()) ? 'refused' : 'ran'), 10);
  });
}

async function tryInline(): Promise<boolean> {
  const script = document.createElement('script');
  script.textContent = 'window.ranInline = true';
  document.body.append(script);
  const picture = document.createElement('div');
  picture.innerHTML = '<img src="x:" onerror="window.ranInline = true">';
  document.body.append(picture);
  await untilRefused('script-src-elem');
  await untilRefused('script-src-attr');
  return 'ranInline' in window;
}

async function tryFrame(address: string): Promise<string> {
  const frame = document.createElement('iframe');
  frame.src = address;
  document.body.append(frame);
  return (await untilRefused('frame-src')) ? 'refused' : 'shown';
}

/** The browser tells of a breach a moment after it; false when it told of none for long. */
async function untilRefused(directive: string): Promise<boolean> {
  const until = performance.now() + 10_000;
  while (!heard.violations.includes(directive) && performance.now() < until)
    await new Promise((resolve) => setTimeout(resolve, 20));
  return heard.violations.includes(directive);
}

Object.assign(window, { probe });
