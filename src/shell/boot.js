// Starts the page in place of the first screen, and carries over what a reader did there meanwhile.
(() => {
  rescue.begun = true;
  if (typeof WebAssembly !== 'object') return;
  const first = document.getElementById('waiting');
  let focused, pressed;
  first.addEventListener('focusin', event => { focused = event.target; });
  first.addEventListener('click', event => { pressed = event.target.closest('button[id]') || pressed; });
  first.addEventListener('submit', event => event.preventDefault());

  function carryOver() {
    for (const old of first.querySelectorAll('input[id]')) {
      const now = document.getElementById(old.id);
      if (!now) continue;
      if (old.type === 'radio') {
        if (old.checked && !old.defaultChecked) now.click();
      } else if (old.value !== old.defaultValue) {
        now.value = old.value;
        // The pause after the last key, which settles an entry, begins again.
        now.dispatchEvent(new Event('input', { bubbles: true }));
      }
    }
    const now = focused && focused.id && document.getElementById(focused.id);
    if (now) {
      now.focus({ preventScroll: true });
      if (now.type === 'text') now.setSelectionRange(focused.selectionStart, focused.selectionEnd);
    }
    if (pressed) document.getElementById(pressed.id)?.click();
  }

  // The first screen is seen before the program takes the processor; a page in the background is never seen. Who comes
  // back wants the entries, not that screen.
  const seen = document.documentElement.classList.contains('returning') ? Promise.resolve() : new Promise(done => {
    new PerformanceObserver(done).observe({ type: 'paint', buffered: true });
    setTimeout(done, 200);
  });
  seen.then(load).then(() => {
    carryOver();
    if (typeof keepOffline === 'function') keepOffline().catch(() => {});
  }, reason => rescue.cannotLoad(reason));
})();
