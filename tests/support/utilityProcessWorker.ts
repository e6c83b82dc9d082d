/** Inside the worker thread that stands for a utility process: gives the module `process.parentPort`, then the messages. */
import { EventEmitter } from 'node:events';
import { type MessagePort, parentPort, workerData } from 'node:worker_threads';

type Delivered = { readonly data: unknown; readonly ports: readonly MessagePort[] };

class ParentPort extends EventEmitter {
  postMessage(message: unknown): void {
    parentPort?.postMessage(message);
  }
}

const port = new ParentPort();
Object.defineProperty(process, 'parentPort', { value: port });
await import(workerData.modulePath);
// Only now: the real one, too, keeps messages until somebody listens.
parentPort?.on('message', ({ data, ports }: Delivered) => port.emit('message', { data, ports: ports.map(asEmitter) }));

/** As Electron's port: a listener gets an event, and nothing flows before `start`. */
function asEmitter(raw: MessagePort) {
  return {
    on: (type: string, listener: (event: { readonly data?: unknown }) => void): void => {
      if (type === 'message') raw.on('message', (data: unknown) => listener({ data }));
      else raw.on(type, () => listener({}));
    },
    start: (): void => {},
    postMessage: (message: unknown): void => raw.postMessage(message),
    close: (): void => raw.close(),
  };
}
