'use strict';
let chosen = '', round = -1;

function show(seen) {
  if (seen.round !== round) { round = seen.round; chosen = ''; at('said').textContent = ''; showSheet(seen.question); }
  showQuestion(seen);
  const open = seen.phase === 'open' && !seen.answer;
  showOptions(seen, option => {
    const one = made('button', '', 'option');
    one.type = 'button';
    one.disabled = !open;
    one.setAttribute('aria-pressed', String(chosen === option.letter));
    one.addEventListener('click', () => vote(option.letter));
    return one;
  });
  showAnswer(seen);
  if (!seen.question) return;
  if (seen.answer) {
    const thought = seen.answer.thoughts[chosen];
    at('said').textContent = !chosen ? '' : chosen === seen.answer.letter
      ? 'As you said.' : `Not as you said${thought ? `: you probably ${thought}` : ''}.`;
  } else if (!open) {
    at('said').textContent = chosen ? `The vote is closed; yours is ${chosen}.` : 'The vote is closed.';
  } else if (!chosen) {
    at('said').textContent = 'Choose; you can choose anew until the vote is closed.';
  }
}

function showSheet(asked) {
  at('sheet').hidden = !asked || !asked.table.length;
  if (!at('sheet').hidden) at('table').replaceChildren(...tableOf(asked));
}

async function vote(letter) {
  const before = chosen;
  chosen = letter;
  show(shown);
  let answer;
  try {
    answer = await fetch('vote', {
      method: 'POST', headers: {'Content-Type': 'application/json'}, body: JSON.stringify({id: me, letter, round}),
    });
  } catch { answer = {status: 0}; }
  const said = {
    200: `Your vote is ${letter}; you can choose anew until the vote is closed.`,
    409: 'That vote is closed already.', 429: 'That was too quick: wait a moment, then choose again.',
  }[answer.status] || 'Your vote did not arrive. Choose again.';
  if (answer.status !== 200) { chosen = before; show(shown); }
  at('said').textContent = said;
}

listen(show);
