// Everything that the model tells of a scene, put on the page.
function show(told) {
  // What is still to be asked will change the picture: its controls stay where the reader put them.
  const moving = new Set(wishes.map(one => one.name));
  shown = told;
  document.body.dataset.layout = told.layout;
  showControls(told.controls, moving);
  showWays(told);
  showNumbers(told);
  at('stage').innerHTML = told.stage;
  at('lift').style.setProperty('--wide', told.size[0] / told.size[1]);
  at('below').innerHTML = told.below;
  showGrips(told);
  at('undo').disabled = !told.undo;
  at('redo').disabled = !told.redo;
  at('trouble').textContent = told.trouble;
  document.body.dataset.asked = number;
  if (ready && !wishes.length) history.replaceState(null, '', '#' + told.address);
  whenStill('why', 180);
  passed(told);
}

function showNumbers(told) {
  if (at('numbers').children.length !== told.numbers.length) {
    at('numbers').replaceChildren(...told.numbers.map(([key, words]) => {
      const box = made('div');
      box.dataset.number = key;
      box.append(made('dt', {textContent: words}), made('dd'));
      return box;
    }));
  }
  told.numbers.forEach(([, , value], place) => { at('numbers').children[place].lastChild.textContent = value; });
  at('headline').textContent = told.headline;
  if (told.remark) at('headline').append(made('strong', {textContent: ` ${told.remark}`}));
}
