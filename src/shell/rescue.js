// What stands in the page's place when it cannot run or has stopped. Written so that old browsers
// read it too. What this browser keeps for the reader can be taken along from here.
var rescue = (function () {
  var root = document.documentElement;
  root.className = 'scripts';

  function store() {
    try { return window.localStorage; } catch (refused) { return null; }
  }

  // Everything kept, key by key.
  function kept() {
    var all = store(), found = [], text = '';
    try {
      for (var i = 0; all && i < all.length; i += 1) if (all.key(i).indexOf('linkwright.') === 0) found.push(all.key(i));
      found.sort();
      for (var j = 0; j < found.length; j += 1) text += '\n' + found[j] + '\n' + all.getItem(found[j]) + '\n';
    } catch (refused) { return text; }
    return text;
  }

  function file() {
    return 'Kept by Linkwright in this browser\nThe address when it stopped: ' + location.href +
      '\nEntries open again when they stand after # in the address of the page.\n' + kept();
  }

  function add(parent, name, text) {
    var it = document.createElement(name);
    if (text) it.appendChild(document.createTextNode(text));
    parent.appendChild(it);
    return it;
  }

  function button(parent, id, text, work) {
    var it = add(parent, 'button', text);
    it.type = 'button';
    it.id = id;
    it.onclick = work;
    return it;
  }

  // Not to the view in which the page stopped: its name stands in the browser's history.
  function again() {
    history.replaceState(null, '');
    location.reload();
  }

  // The entries are set aside where the empty form offers them back; taking them away first makes room for that.
  // Those that another tab left last stay: this tab's own are what it stopped with.
  function without(outcome) {
    var all = store(), entries = null, shared = null;
    try { entries = window.sessionStorage.getItem('linkwright.entries'); } catch (refused) { /* Nothing of its own. */ }
    try {
      shared = all.getItem('linkwright.entries');
      entries = entries || shared;
      if (shared === entries) all.removeItem('linkwright.entries');
      all.removeItem('linkwright.leaf');
    } catch (refused) { /* Nothing was kept, then. */ }
    try {
      if (entries) all.setItem('linkwright.before', entries);
    } catch (full) {
      try { if (shared === entries) all.setItem('linkwright.entries', entries); } catch (refused) { /* It stands below. */ }
      outcome.textContent = 'There is no room to set your entries aside. Save the text below as a file, then empty the address of this page by hand.';
      return;
    }
    try { window.sessionStorage.removeItem('linkwright.entries'); } catch (refused) { /* As above. */ }
    history.replaceState(null, '', location.href.split('#')[0]);
    location.reload();
  }

  function copy(area, outcome) {
    area.focus();
    area.select();
    var done = false;
    try { done = document.execCommand('copy'); } catch (refused) { done = false; }
    outcome.textContent = done ? 'Copied.' : 'This browser did not copy. The text is marked: press Ctrl and C, or hold it.';
  }

  function show(title, why, detail, idle) {
    if (document.getElementById('rescue')) return;
    var box = document.createElement('main');
    box.id = 'rescue';
    box.className = 'rescue';
    add(box, 'h1', title);
    add(box, 'p', why).setAttribute('role', 'alert');
    var row = add(box, 'div');
    row.className = 'buttons';
    button(row, 'again', 'Start again', again);
    if (!idle) {
      button(row, 'without', 'Start again with an empty form', function () { without(room); });
      var room = add(box, 'p', 'The empty form offers your entries back. All else that you saved stays where it is.');
      room.setAttribute('role', 'status');
    }
    add(box, 'h2', 'What this browser keeps for you');
    var text = file();
    var label = add(box, 'label', 'As text, to take along. It has not left this device.');
    label.htmlFor = 'kept';
    var area = add(box, 'textarea', text);
    area.id = 'kept';
    area.readOnly = true;
    area.rows = 8;
    row = add(box, 'div');
    row.className = 'buttons';
    button(row, 'copy-kept', 'Copy', function () { copy(area, outcome); });
    var link = add(row, 'a', 'Save as a file');
    link.id = 'save-kept';
    link.className = 'button';
    link.setAttribute('download', 'linkwright.txt');
    link.href = 'data:text/plain;charset=utf-8,' + encodeURIComponent(text);
    var outcome = add(box, 'p');
    outcome.setAttribute('role', 'status');
    if (detail) add(box, 'p', 'For whoever mends it: ' + detail).className = 'detail';
    root.removeAttribute('data-live');
    while (document.body.firstChild) document.body.removeChild(document.body.firstChild);
    document.body.appendChild(box);
  }

  function words(reason) { return String(reason && reason.message || reason || ''); }

  function stopped(reason) {
    show('Linkwright has stopped', 'Something went wrong inside the page, and it cannot go on from here. What you saved is safe.', words(reason));
  }

  function cannotLoad(reason) {
    show('Linkwright did not load', document.getElementById('packed') ?
      'This file is not as it was made: a part of it is missing or was changed on the way. Take it anew from where it came, and open it from a folder.' :
      'A part of the page did not arrive or did not start. The connection may have broken: try again where the signal is better.', words(reason));
  }

  function cannotRun(reason) {
    show('This browser cannot run Linkwright', 'It lacks WebAssembly or another part that the page needs, or has it switched off, as a lockdown mode does. A newer browser, or one that allows it, will do.', words(reason), true);
  }

  // Of the page's own engine, and not of something that the browser added to the page.
  function isOwn(reason) {
    var wasm = window.WebAssembly && reason instanceof window.WebAssembly.RuntimeError;
    return wasm || /wasm/.test(String(reason && reason.stack || ''));
  }

  function noticed(reason, event) {
    if (root.hasAttribute('data-live')) {
      if (isOwn(reason)) stopped(reason);
    } else if (isOwn(reason) || event.filename === location.href.split('#')[0]) {
      cannotLoad(reason);
    }
  }

  window.addEventListener('error', function (event) { noticed(event.error || event.message, event); });
  window.addEventListener('unhandledrejection', function (event) { noticed(event.reason, event); });

  // Whoever comes back, or with a link, need not be welcomed while the page loads.
  try {
    if (location.hash.length > 1 || store().getItem('linkwright.entries')) root.className += ' returning';
  } catch (refused) { /* Nothing is kept. */ }
  var own = { cannotLoad: cannotLoad, cannotRun: cannotRun, begun: false };
  document.addEventListener('DOMContentLoaded', function () {
    if (typeof WebAssembly !== 'object') cannotRun('WebAssembly');
    else if (!own.begun) cannotLoad('The page ends before its last script.');
  });
  return own;
})();
