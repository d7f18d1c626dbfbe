'use strict';
const data = JSON.parse(document.getElementById('data').textContent);
const at = name => document.getElementById(name);
const made = (tag, words, kind) => {
  const one = document.createElement(tag);
  if (words) one.textContent = words;
  if (kind) one.className = kind;
  return one;
};
let chosen = 0;

const rows = data.ways.map((way, number) => {
  const row = made('label', '', 'way'), pick = made('input');
  Object.assign(pick, {type: 'radio', name: 'way', checked: number === chosen});
  pick.addEventListener('change', () => { chosen = number; show(); });
  const badge = made('b', way.letter), bar = made('span', '', 'bar'), fill = made('i');
  badge.style.background = way.colour;
  badge.style.color = way.ink;
  bar.append(fill);
  const name = made('span', `(${way.label}) `), most = made('span', '', 'most');
  const carries = made('span', '', 'carries'), what = made('span', '', 'what');
  name.append(most);
  row.append(pick, badge, name, carries, bar, what);
  at('ways').append(row);
  return {row, fill, most, carries, what};
});

function showWays(radius) {
  rows.forEach((row, number) => {
    const state = data.states[number][radius];
    row.fill.style.width = state ? `${100 * data.share[number][radius]}%` : '0';
    row.fill.className = !state ? '' : state.set_by === 'stability' ? 'stability' : 'structural';
    const none = data.lies[number][radius] ? 'turns over' : 'out of reach';
    row.carries.textContent = state ? state.carries : none;
    row.what.textContent = state ? `set by: ${state.first}` : '';
    row.most.textContent = data.best[radius] === number ? '★ carries most here' : '';
  });
}

function showLift(radius) {
  const way = data.ways[chosen], state = data.states[chosen][radius];
  at('first').textContent = state
    ? `${way.letter} carries ${state.carries} here, at a boom angle of ${state.angle}; the tip deflects by ` +
      `${state.bend} then. What sets it: ${state.first}.`
    : data.lies[chosen][radius]
      ? `${way.letter}: ${data.never[chosen]}`
      : `${way.letter} cannot put its load at this radius.`;
  at('picture').innerHTML = `<svg class="side" viewBox="${data.box}">${state ? state.picture : ''}</svg>`;
  at('picture').dataset.way = way.letter;
  at('picture').dataset.radius = data.radii[radius];
}

function rival(radius) {
  const reach = data.ways.map((_, number) => number).filter(n => n !== chosen && data.states[n][radius]);
  return reach.sort((a, b) => data.share[b][radius] - data.share[a][radius])[0];
}

function showWhy(radius) {
  const other = rival(radius), parts = other === undefined ? null : data.why[`${chosen}${other}`][radius];
  at('pair').textContent = parts ? `Why ${data.ways[chosen].letter} and ${data.ways[other].letter} differ` : 'Why';
  at('none').textContent = parts ? '' : 'There is nothing to compare with at this radius.';
  const kilos = parts ? parts.map(part => part[1]) : [0];
  const low = Math.min(0, ...kilos), span = Math.max(0, ...kilos) - low || 1;
  at('parts').style.setProperty('--zero', `${-100 * low / span}%`);
  at('parts').replaceChildren(...(parts || []).map(([words, kilo, said, kind]) => {
    const row = made('tr'), bar = made('i', '', kind), hold = made('div'), middle = made('td');
    bar.style.left = `${100 * (Math.min(kilo, 0) - low) / span}%`;
    bar.style.width = `${100 * Math.abs(kilo) / span}%`;
    hold.append(bar);
    middle.append(hold);
    row.append(made('td', words), middle, made('td', said));
    return row;
  }));
}

function show() {
  const radius = Number(at('radius').value);
  at('shown').textContent = data.radii[radius];
  at('radius').setAttribute('aria-valuetext', data.radii[radius]);
  showWays(radius);
  showLift(radius);
  showWhy(radius);
}

at('radius').max = data.radii.length - 1;
at('radius').value = data.start;
at('radius').addEventListener('input', show);
for (const [name, step] of [['nearer', -1], ['farther', 1]]) {
  at(name).addEventListener('click', () => { at('radius').value = Number(at('radius').value) + step; show(); });
}
show();
