// The conformance file in this Node and in the browsers of this machine.
//   node tests/engine/conformance.mjs            compare this Node with conformance.json
//   node tests/engine/conformance.mjs --write    write it anew: only when draws or answers are meant to change
//   node tests/engine/conformance.mjs COMMAND …  compare a browser, started by the command with an address added,
//                                                such as: firefox-esr --headless
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { fileURLToPath } from 'node:url';
import { runInThisContext } from 'node:vm';
import { conformanceScript } from './conformance-script.mjs';

const file = fileURLToPath(new URL('conformance.json', import.meta.url));
const script = await conformanceScript();
const [, , ...command] = process.argv;

async function inThisNode() {
  runInThisContext(script);
  return { engine: `Node ${process.version}`, found: await globalThis.conformance };
}

/** Serves a page that sends back what it found. */
async function inBrowser([program, ...words]) {
  const report = `conformance.then((found) => ({ engine: navigator.userAgent, found }),
    (error) => ({ engine: String(error), found: {} }))
    .then((said) => fetch('/', { method: 'POST', body: JSON.stringify(said) }));`;
  let said;
  const server = createServer((request, response) => {
    if (request.method === 'POST') {
      const parts = [];
      request.on('data', (part) => parts.push(part));
      request.on('end', () => {
        response.end();
        said(JSON.parse(Buffer.concat(parts).toString()));
      });
    } else if (request.url === '/script.js') {
      response.setHeader('content-type', 'text/javascript');
      response.end(`${script}\n${report}`);
    } else {
      response.setHeader('content-type', 'text/html');
      response.end('<!doctype html><title>Conformance</title><script src="/script.js"></script>');
    }
  }).listen(0, '127.0.0.1');
  await once(server, 'listening');
  const heard = new Promise((resolve) => (said = resolve));
  const browser = spawn(program, [...words, `http://127.0.0.1:${server.address().port}/`], {
    stdio: 'ignore',
    // A group of its own, as a browser starts others.
    detached: true,
  });
  try {
    return await heard;
  } finally {
    process.kill(-browser.pid);
    server.closeAllConnections();
    server.close();
  }
}

if (command[0] === '--write')
  writeFileSync(file, `${JSON.stringify((await inThisNode()).found, null, 2)}\n`);
else {
  const { engine, found } = await (command.length === 0 ? inThisNode() : inBrowser(command));
  const expected = JSON.parse(readFileSync(file, 'utf8'));
  const names = [...new Set([...Object.keys(expected), ...Object.keys(found)])];
  const other = names.filter((name) => expected[name] !== found[name]);
  for (const name of other) console.error(`${name}: ${found[name]} in place of ${expected[name]}`);
  console.log(`${engine}: ${names.length - other.length} of ${names.length} digests agree`);
  if (other.length > 0) process.exitCode = 1;
}
