// Firefox through its own Marionette protocol: WebDriver's commands as JSON over a local socket, each message with its length before it.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { freePort } from './free-port.mjs';

const PLACES = ['/usr/bin/firefox-esr', '/usr/bin/firefox'];

/** @returns null where there is no Firefox */
export async function firefox() {
  const path = PLACES.find((one) => existsSync(one));
  if (path === undefined) return null;
  const port = await freePort();
  const profile = mkdtempSync(join(tmpdir(), 'cuptide-firefox-'));
  writeFileSync(join(profile, 'user.js'), `user_pref('marionette.port', ${port});\n`);
  const program = spawn(path, ['--headless', '--marionette', '--profile', profile], {
    stdio: 'ignore',
    env: { ...process.env, HOME: profile },
  });
  const send = commands(await connected(port, 150));
  const { capabilities } = await send('WebDriver:NewSession', {});
  await send('WebDriver:SetTimeouts', { script: 1_800_000, pageLoad: 600_000 });
  await send('WebDriver:SetWindowRect', { width: 1200, height: 885 });
  return {
    version: `${capabilities.browserName} ${capabilities.browserVersion}`,
    open: (url) => send('WebDriver:Navigate', { url }),
    run: async (body) => {
      const { value } = await send('WebDriver:ExecuteAsyncScript', {
        script: `const done = arguments[arguments.length - 1]; const script = () => (async () => { ${body} })(); script().then((value) => done({ value }), (error) => done({ error: String(error.message ?? error) }));`,
        args: [],
        sandbox: null,
      });
      if (value.error !== undefined) throw new Error(value.error);
      return value.value;
    },
    picture: async () =>
      Buffer.from((await send('WebDriver:TakeScreenshot', { full: false })).value, 'base64'),
    pdf: async () => Buffer.from((await send('WebDriver:Print', {})).value, 'base64'),
    close: async () => {
      await send('Marionette:Quit', { flags: ['eForceQuit'] }).catch(() => {});
      program.kill();
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** The browser takes a while until it listens. */
async function connected(port, tries) {
  try {
    return await new Promise((resolve, reject) => {
      const socket = connect(port, '127.0.0.1');
      socket.once('connect', () => resolve(socket));
      socket.once('error', reject);
    });
  } catch (error) {
    if (tries === 0) throw error;
    await new Promise((resolve) => setTimeout(resolve, 200));
    return connected(port, tries - 1);
  }
}

/** Messages go [0, id, command, parameters] and come back [1, id, error, result]. */
function commands(socket) {
  const waiting = new Map();
  let [buffer, last] = [Buffer.alloc(0), 0];
  socket.on('data', (data) => {
    buffer = Buffer.concat([buffer, data]);
    for (;;) {
      const colon = buffer.indexOf(':');
      const length = Number(buffer.subarray(0, Math.max(0, colon)).toString());
      if (colon < 0 || buffer.length < colon + 1 + length) return;
      const message = JSON.parse(buffer.subarray(colon + 1, colon + 1 + length).toString());
      buffer = buffer.subarray(colon + 1 + length);
      // The first message is the browser's greeting.
      if (!Array.isArray(message)) continue;
      const [, id, error, result] = message;
      const one = waiting.get(id);
      waiting.delete(id);
      if (error === null) one?.resolve(result);
      else one?.reject(new Error(error.message));
    }
  });
  return (command, parameters) =>
    new Promise((resolve, reject) => {
      last += 1;
      waiting.set(last, { resolve, reject });
      const text = JSON.stringify([0, last, command, parameters]);
      socket.write(`${Buffer.byteLength(text)}:${text}`);
    });
}
