// Two files that the head asked for already: they are read while the page itself still is, and `load` starts them.
const program = typeof WebAssembly === 'object' && (() => {
  const asked = name => document.querySelector(`link[rel=${name}]`).href;
  const apart = fetch(asked('preload')).then(answer => answer.arrayBuffer());
  const both = Promise.all([import(asked('modulepreload')), apart]);
  // Whoever starts it tells what fails.
  both.catch(() => {});
  return both;
})();

function load() {
  return program.then(([app, apart]) => app.default({ module_or_path: app.whole(new Uint8Array(apart)) }));
}
