// Two files that the head asked for already: they are read while the page itself still is, and `load` starts them.
const program = typeof WebAssembly === 'object' && (() => {
  const asked = name => document.querySelector(`link[rel=${name}]`).href;
  const fetched = async cache => {
    const answer = await fetch(asked('preload'), { cache });
    const bytes = new Uint8Array(await answer.arrayBuffer());
    // Neither a page that tells of an error nor nothing at all.
    if (!answer.ok || !(bytes[0] < 2)) throw new Error('A part of the program did not come: ' + answer.status);
    // Its name holds the beginning of its hash. What the worker put together it has looked at; only a page from a safe
    // address can.
    if (bytes[0] && crypto.subtle) {
      const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
      const mark = Array.from(hash.subarray(0, 8), byte => byte.toString(16).padStart(2, '0')).join('');
      if (!asked('preload').includes(mark)) throw new Error('A part of the program is damaged.');
    }
    return bytes;
  };
  // A copy that the browser keeps may be damaged.
  const both = Promise.all([import(asked('modulepreload')), fetched('default').catch(() => fetched('reload'))]);
  // Whoever starts it tells what fails.
  both.catch(() => {});
  return both;
})();

function load() {
  return program.then(([app, apart]) => app.start(apart));
}
