/** The script of the page of sites: sorts by a column, filters rows by words. It fetches nothing and writes no HTML. */
export const PAGE_SCRIPT = `
const table = document.getElementById('sites');
const body = table.tBodies[0];
const rows = [...body.rows];
const filter = document.getElementById('filter');
const only = document.getElementById('only');
const shown = document.getElementById('shown');
const heads = [...table.tHead.rows[0].cells];
const valueOf = (row, at) => {
  const given = row.cells[at].dataset.v;
  return given === undefined ? row.cells[at].textContent : given === '' ? -Infinity : Number(given);
};
const order = (a, b) =>
  typeof a === 'number' && typeof b === 'number' ? (a < b ? -1 : a > b ? 1 : 0) : String(a).localeCompare(String(b));
heads.forEach((head, at) => {
  const button = head.querySelector('button');
  if (button === null) return;
  button.addEventListener('click', () => {
    const down = head.getAttribute('aria-sort') === 'ascending';
    heads.forEach((one) => one.removeAttribute('aria-sort'));
    head.setAttribute('aria-sort', down ? 'descending' : 'ascending');
    rows.sort((a, b) => (down ? -1 : 1) * order(valueOf(a, at), valueOf(b, at)));
    body.append(...rows);
  });
});
const show = () => {
  const words = filter.value.toLowerCase().split(/\\s+/).filter((word) => word !== '');
  let count = 0;
  for (const row of rows) {
    const text = row.dataset.text;
    row.hidden = !words.every((word) => text.includes(word)) || (only.checked && row.dataset.mind === '0');
    if (!row.hidden) count += 1;
  }
  shown.textContent = String(count);
};
filter.addEventListener('input', show);
only.addEventListener('change', show);
document.getElementById('controls').hidden = false;
`;
