// The ways of one length side by side: who carries more here, by how much, and why.
const SVG = 'http://www.w3.org/2000/svg';

function drawn(tag, more) {
  const one = document.createElementNS(SVG, tag);
  for (const [name, text] of Object.entries(more)) one.setAttribute(name, text);
  return one;
}

function showWays(told) {
  if (told.title !== undefined) at('question').textContent = told.title;
  if (told.ways) {
    while (at('cards').children.length > told.ways.length) at('cards').lastChild.remove();
    told.ways.forEach((way, place) => fillCard(at('cards').children[place] || newCard(), way));
  }
  // Until its reasons have come, an old sentence would speak of another scene.
  at('because').classList.add('stale');
}

function newCard() {
  const card = made('button', {type: 'button', className: 'way'});
  card.append(
    made('b', {className: 'badge'}), made('span', {className: 'label'}), made('strong', {className: 'carries'}),
    drawn('svg', {viewBox: '0 0 200 16', 'aria-hidden': 'true', class: 'mini', preserveAspectRatio: 'none'}),
    made('span', {className: 'bar'}), made('span', {className: 'less'}), made('span', {className: 'what'}));
  card.querySelector('.bar').append(made('i'));
  card.addEventListener('click', () => {
    ask({do: 'way', number: [...at('cards').children].indexOf(card)});
  });
  at('cards').append(card);
  return card;
}

function fillCard(card, way) {
  const written = JSON.stringify(way), part = name => card.querySelector(`.${name}`);
  if (card.written === written) return;
  card.written = written;
  card.way = way;
  card.dataset.way = way.letter;
  card.style.setProperty('--way', way.colour);
  card.setAttribute('aria-pressed', way.present);
  Object.assign(part('badge'), {textContent: way.letter, style: `background:${way.colour};color:${way.ink}`});
  part('label').textContent = `${way.label} %`;
  part('carries').textContent = way.carries;
  part('less').textContent = way.best ? 'carries most' : way.less ? `${way.less} less` : '';
  part('less').classList.toggle('best', way.best);
  part('what').textContent = way.tips || !way.set_by ? way.set_by || way.what : `${way.set_by}: ${way.what}`;
  const bar = part('bar').firstChild;
  bar.style.width = `${100 * way.share}%`;
  bar.className = way.tips ? 'stability' : 'structural';
  const high = 15 / way.boom.length;
  part('mini').replaceChildren(...way.boom.map(([start, end], section) => drawn('rect', {
    x: 200 * start, width: 200 * (end - start), y: 0.5 + section * high / 2, height: 15 - section * high,
    class: section % 2 ? 'odd' : 'even'})));
}

readings.why = told => {
  at('because').textContent = told.sentence;
  at('because').classList.remove('stale');
  at('pair').textContent = told.pair ? `Why: ${told.pair}` : '';
  at('strip').innerHTML = told.strip;
  at('reasons').hidden = !told.strip && !told.pair;
  const kilos = told.parts.map(part => part[1]), low = Math.min(0, ...kilos), span = Math.max(0, ...kilos) - low || 1;
  at('parts').style.setProperty('--zero', `${-100 * low / span}%`);
  at('parts').replaceChildren(...told.parts.map(([words, kilo, said, kind]) => {
    const row = made('tr'), bar = made('i', {className: kind}), hold = made('div'), middle = made('td');
    bar.style.left = `${100 * (Math.min(kilo, 0) - low) / span}%`;
    bar.style.width = `${100 * Math.abs(kilo) / span}%`;
    hold.append(bar);
    middle.append(hold);
    row.append(made('td', {textContent: words}), middle, made('td', {textContent: said}));
    return row;
  }));
};
