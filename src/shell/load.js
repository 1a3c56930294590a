// Two files that the head asked for already: they are read while the page itself still is, and `load` starts them.
const program = typeof WebAssembly === 'object' && (() => {
  const asked = name => document.querySelector(`link[rel=${name}]`).href;
  const fetched = () => fetch(asked('preload'));
  // Where a host names the program's kind wrong, or a browser cannot do that, the glue knows another way.
  const wasm = WebAssembly.compileStreaming ? WebAssembly.compileStreaming(fetched()).catch(fetched) : fetched();
  const both = Promise.all([import(asked('modulepreload')), wasm]);
  // Whoever starts it tells what fails.
  both.catch(() => {});
  return both;
})();

function load() {
  return program.then(([app, wasm]) => app.default({ module_or_path: wasm }));
}
