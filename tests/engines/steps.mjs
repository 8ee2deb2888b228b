// What each browser engine is asked to do with a letter. Every step runs in the page and gives what was seen.

/** Runs in the page before the first step: notes complaints, and keeps what is saved. */
export const listen = `
  window.seen = { faults: [], files: [] };
  addEventListener('error', (event) => seen.faults.push(String(event.message)));
  document.addEventListener('securitypolicyviolation', (event) => seen.faults.push('policy: ' + event.violatedDirective));
  const make = URL.createObjectURL;
  URL.createObjectURL = (blob) => { window.lastBlob = blob; return make.call(URL, blob); };
  HTMLAnchorElement.prototype.click = function () { if (this.download) seen.files.push({ name: this.download, blob: window.lastBlob }); };
  window.until = (test, ms = 900000) => new Promise((resolve, reject) => {
    const end = performance.now() + ms;
    const look = () => { const found = test(); if (found) resolve(found); else if (performance.now() > end) reject(new Error('not within ' + ms + ' ms: ' + test)); else setTimeout(look, 50); };
    look();
  });
  window.press = (name) => { const button = [...document.querySelectorAll('button')].find((one) => one.textContent.trim() === name); if (!button) throw new Error('no button ' + name); button.click(); };
  window.typed = (id, text) => { const box = document.getElementById(id); box.focus(); box.value = text; box.dispatchEvent(new InputEvent('input', { bubbles: true })); };
  window.phase = () => document.querySelector('.status')?.dataset.phase;
  window.settled = () => until(() => ['certified', 'as-sent'].includes(phase()) && !document.querySelector('[data-older]'));
  window.base64 = async (blob) => { const bytes = new Uint8Array(await blob.arrayBuffer()); let text = ''; for (const byte of bytes) text += String.fromCharCode(byte); return btoa(text); };
  window.saved = async (name) => { const before = seen.files.length; press(name); await until(() => seen.files.length > before); const { name: file, blob } = seen.files.at(-1); return { file, base64: await base64(blob) }; };
  return true;`;

export const steps = {
  wakes: `await until(() => document.documentElement.dataset.ready !== undefined); return phase();`,
  typefaces: `await document.fonts.ready; return [...document.fonts].filter((one) => one.status === 'loaded').length;`,
  'provisional after a change': `typed('lead-seats.count', '20'); const t = performance.now(); await until(() => phase() === 'provisional'); return Math.round(performance.now() - t);`,
  'certified after a change': `const t = performance.now(); await settled(); return Math.round(performance.now() - t);`,
  'before and after': `return document.querySelector('.changed p').textContent.replace(/\\s+/g, ' ');`,
  'saved scenario': `return saved('Save the scenario');`,
  'saved answer': `return saved('Save the answer (JSON)');`,
  'saved order sheet': `return saved('Save the order sheet (XLSX)');`,
  'saved letter': `return saved('Save this letter');`,
  undo: `press('Undo'); await until(() => phase() === 'as-sent' && !document.querySelector('[data-older]')); return document.querySelector('[data-part=lead]').textContent;`,
  questions: `const found = []; for (const one of document.querySelectorAll('details.ask[id^=ask-]')) { one.open = true; await until(() => one.querySelector('table, svg, .wrong') && !/^So far/.test(one.querySelector('caption')?.textContent)); const wrong = one.querySelector('.wrong')?.textContent; found.push(one.id + (wrong ? ': ' + wrong : '')); one.open = false; } return found;`,
  walk: `const walk = document.getElementById('walk'); walk.open = true; await until(() => walk.querySelector('svg')); return walk.querySelectorAll('svg').length;`,
  cards: `press('Show the cards'); await until(() => document.querySelector('.card')); return document.querySelectorAll('.card').length;`,
  faults: `return seen.faults;`,
};
