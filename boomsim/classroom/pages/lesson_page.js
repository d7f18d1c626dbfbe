'use strict';
// What follows a guess is sealed until there is one: neither shown, nor printed, nor read aloud.
const at = name => document.getElementById(name);
const made = (tag, words, kind) => {
  const one = document.createElement(tag);
  if (words) one.textContent = words;
  if (kind) one.className = kind;
  return one;
};
const chosen = field => field.querySelector('input:checked')?.value;
const fields = [...document.querySelectorAll('#guess fieldset')];

async function opened() {
  const letters = atob(at('sealed').textContent.trim()), bytes = Uint8Array.from(letters, one => one.charCodeAt(0));
  const text = new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))).text();
  return JSON.parse(await text);
}

function verdict(part, letter) {
  const own = part.options[letter], right = part.options[part.letter];
  const thought = part.thoughts[letter] ? `: you probably ${part.thoughts[letter]}` : '';
  const so = letter === part.letter ? 'As you said.' : `Not as you said${thought}.`;
  const said = made('p', `${part.asked ? `${part.asked}: ` : ''}you said ${own}; the model says ${right}. ${so}`, 'said');
  if (letter === part.letter) said.classList.add('right');
  return said;
}

function selfCheck(check) {
  const field = at('check').querySelector('fieldset');
  field.addEventListener('change', () => {
    const letter = chosen(field), right = letter === check.letter;
    at('checked').className = right ? 'said right' : 'said';
    at('checked').textContent = right ? `Right. ${check.reason}`
      : `Not ${check.options[letter]}. You probably ${check.thoughts[letter]}. Try again.`;
  });
  at('working').addEventListener('click', () => { at('checked').className = 'said'; at('checked').textContent = check.reason; });
}

// What is wider than a phone says so: else nobody looks for the rest.
function sideways() {
  for (const one of document.querySelectorAll('.shown')) {
    const more = one.scrollWidth > one.clientWidth + 8, said = one.previousElementSibling;
    const told = said?.classList.contains('sideways');
    if (more && !told) one.before(made('p', 'Push it sideways: there is more to the right.', 'sideways'));
    if (!more && told && one.clientWidth) said.remove();
    if (more) one.tabIndex = 0; // so that a keyboard can push it too
    else one.removeAttribute('tabindex');
  }
}

async function goOn() {
  const letters = fields.map(chosen);
  if (letters.some(one => !one)) return;
  const rest = await opened();
  at('rest').innerHTML = rest.html;
  const place = at('verdicts');
  place.append(...rest.parts.map((part, number) => verdict(part, letters[number])));
  selfCheck(rest.check);
  at('go').remove();
  at('how').remove(); // it has been done
  for (const one of document.querySelectorAll('#guess input')) one.disabled = true;
  at('crane')?.addEventListener('click', start);
  sideways();
  for (const one of document.querySelectorAll('img')) one.addEventListener('load', sideways);
  for (const one of document.querySelectorAll('details')) one.addEventListener('toggle', sideways);
  addEventListener('resize', sideways);
  at('rest').querySelector('h2')?.scrollIntoView({block: 'start'});
}

function start() {
  const frame = made('iframe');
  frame.title = 'The crane, live';
  frame.src = at('crane').dataset.at;
  at('crane').replaceWith(frame);
}

if (fields.length) {
  const weigh = () => { at('go').disabled = !fields.every(chosen); };
  at('go').hidden = false;
  at('guess').addEventListener('change', weigh);
  weigh(); // a page that is opened again may have kept its choices
  at('go').addEventListener('click', goOn);
}
