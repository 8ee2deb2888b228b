// Stands between a test, which waits without looking up, and the warm process.
import { fork } from 'node:child_process';
import { workerData } from 'node:worker_threads';

const { port, signal, child: file, command } = workerData;
const child = fork(file, [command], { stdio: ['ignore', 'ignore', 'ignore', 'ipc'] });
const done = (answer) => {
  port.postMessage(answer);
  Atomics.store(signal, 0, 1);
  Atomics.notify(signal, 0);
};
child.on('message', done);
child.on('exit', (code) => done({ status: code ?? -1, out: '', err: 'the warm process ended' }));
port.on('message', (asked) => child.send(asked));
