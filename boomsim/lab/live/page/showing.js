// What is new in the scene, put on the page.
function show(told) {
  // What is still to be asked will change the picture: its controls stay where the reader put them.
  const moving = new Set(wishes.map(one => one.name));
  shown = {...shown, ...told};
  if (told.layout) document.body.dataset.layout = told.layout;
  if (told.controls) showControls(told.controls);
  bringControls(moving);
  showWays(told);
  showNumbers(told);
  showPicture('stage', told.stage);
  if (told.size) at('lift').style.setProperty('--wide', told.size[0] / told.size[1]);
  if (told.below !== undefined) showRest(told, number);
  if (told.grips || told.size) showGrips(shown);
  sayHeld();
  at('undo').disabled = !shown.undo;
  at('redo').disabled = !shown.redo;
  if (told.trouble !== undefined) at('trouble').textContent = told.trouble;
  document.body.dataset.asked = number;
  if (ready) writeAddress();
  whenStill('why', 180);
  passed(shown);
}

// Once nothing moves: it takes as long as a picture, and a browser may refuse to do it often.
let writing = null;

function writeAddress() {
  clearTimeout(writing);
  writing = setTimeout(() => wishes.length || busy ? writeAddress() : history.replaceState(null, '', '#' + shown.address), 150);
}

// What follows a picture: the views below it.
function showRest(told, number) {
  showPicture('below', told.below);
  document.body.dataset.whole = number;
}

function showNumbers(told) {
  if (told.headline !== undefined || told.remark !== undefined) showHeadline();
  if (!told.numbers) return;
  if (at('numbers').children.length !== told.numbers.length) {
    at('numbers').replaceChildren(...told.numbers.map(([key, words]) => {
      const box = made('div');
      box.dataset.number = key;
      box.append(made('dt', {textContent: words}), made('dd'));
      return box;
    }));
  }
  told.numbers.forEach(([, , value], place) => write(at('numbers').children[place].lastChild, value));
}

function showHeadline() {
  at('headline').textContent = shown.headline;
  if (shown.remark) at('headline').append(made('strong', {textContent: ` ${shown.remark}`}));
}
