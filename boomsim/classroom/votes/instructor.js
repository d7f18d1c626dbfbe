'use strict';
// The token comes behind the # sign, which no browser sends, and leaves the address line at once.
const given = location.hash.slice(1);
if (given) sessionStorage.setItem('boomsim-instructor', given);
const token = sessionStorage.getItem('boomsim-instructor') || '';
history.replaceState(null, '', location.pathname);
let known = null;

async function control(asked) {
  const answer = await fetch('control', {
    method: 'POST', body: JSON.stringify(asked),
    headers: {'Content-Type': 'application/json', 'Authorization': `Bearer ${token}`},
  });
  at('trouble').textContent = answer.ok ? '' : {
    401: 'This page lacks its token. Open the address that the command printed.',
    429: 'That was too quick: wait a moment.',
  }[answer.status] || 'The class server did not take that.';
  if (answer.ok) { known = await answer.json(); showKnown(); }
}

function showKnown() {
  const list = at('choose'), chosen = list.value;
  if (!list.options.length) {
    for (const one of known.questions) {
      const option = made('option', `${one.lesson}  ${one.asked || 'self-check'}  –  ${one.title}`);
      option.value = one.key;
      list.append(option);
    }
    list.value = shown && shown.question ? shown.question.key : chosen || known.questions[0].key;
    showHint();
  }
  const answer = known.answer;
  at('right').textContent = answer ? `${answer.letter}. ${answer.reason}` : 'No question is open.';
  at('thoughts').replaceChildren(...Object.entries(answer ? answer.thoughts : {}).map(
    ([letter, thought]) => made('li', `Whoever chooses ${letter} probably ${thought}.`)));
  if (shown && known.counts) showOptions({...shown, counts: known.counts, before: known.before}, () => made('div', '', 'option'));
}

function showHint() {
  const again = shown && shown.question && shown.question.key === at('choose').value && shown.votes > 0;
  at('hint').textContent = again
    ? 'Opening the same question again keeps the votes before, to compare: let the class talk it over in pairs first.' : '';
}

function show(seen) {
  showQuestion(seen);
  showOptions(seen, () => made('div', '', 'option'));
  showAnswer(seen);
  at('votes').textContent = seen.votes;
  at('of').textContent = `${seen.votes === 1 ? 'vote' : 'votes'} of ${plural(seen.here, 'page')}, ${seen.phase}${seen.counts ? '; all see them' : ''}`;
  for (const [name, can] of [['close', seen.phase === 'open'], ['show', seen.question && !seen.counts], ['tell', seen.question && !seen.answer]]) {
    document.querySelector(`[data-do="${name}"]`).disabled = !can;
  }
  showHint();
  waiting = true;
}

// Counts are asked for apart, with the token, at most once in half a second.
let waiting = false;
setInterval(() => { if (waiting && token) { waiting = false; control({do: 'look'}); } }, 500);

for (const button of document.querySelectorAll('[data-do]')) {
  button.addEventListener('click', () => {
    if (button.dataset.do === 'next') {
      at('choose').selectedIndex = Math.min(at('choose').selectedIndex + 1, at('choose').options.length - 1);
      showHint();
    } else control({do: button.dataset.do, question: at('choose').value});
  });
}
at('choose').addEventListener('change', showHint);
if (!token) at('trouble').textContent = 'This page lacks its token. Open the address that the command printed.';
control({do: 'look'}).catch(() => {});
listen(show);
