// WebKitGTK through plain WebDriver (W3C), over the loopback.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { freePort } from './free-port.mjs';

const DRIVER = '/usr/bin/WebKitWebDriver';

/** @returns null where there is no driver or no display to show on */
export async function webkit() {
  // Without a display the browser waits for one until the request is given up, five minutes later.
  const { DISPLAY, WAYLAND_DISPLAY } = process.env;
  if (!existsSync(DRIVER) || !(DISPLAY || WAYLAND_DISPLAY)) return null;
  const port = await freePort();
  const driver = spawn(DRIVER, [`--port=${port}`], { stdio: 'ignore' });
  const call = async (method, path, body) => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const { value } = await answer.json();
    if (!answer.ok) throw new Error(value.message ?? value.error);
    return value;
  };
  const started = async (tries) => {
    try {
      return await call('GET', '/status');
    } catch (error) {
      if (tries === 0) throw error;
      await new Promise((resolve) => setTimeout(resolve, 200));
      return started(tries - 1);
    }
  };
  try {
    await started(50);
    const { sessionId, capabilities } = await call('POST', '/session', { capabilities: {} });
    const session = `/session/${sessionId}`;
    await call('POST', `${session}/timeouts`, { script: 1_800_000, pageLoad: 600_000 });
    await call('POST', `${session}/window/rect`, { width: 1200, height: 800 });
    return {
      version: `${capabilities.browserName} ${capabilities.browserVersion}`,
      open: (url) => call('POST', `${session}/url`, { url }),
      run: async (body) => {
        const { error, value } = await call('POST', `${session}/execute/async`, {
          script: `const done = arguments[arguments.length - 1]; (async () => { ${body} })().then((value) => done({ value }), (error) => done({ error: String(error.message ?? error) }));`,
          args: [],
        });
        if (error !== undefined) throw new Error(error);
        return value;
      },
      picture: async () => Buffer.from(await call('GET', `${session}/screenshot`), 'base64'),
      pdf: null,
      close: async () => {
        await call('DELETE', session).catch(() => {});
        driver.kill();
      },
    };
  } catch (error) {
    driver.kill();
    throw error;
  }
}
