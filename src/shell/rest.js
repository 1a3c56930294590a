// The second part of the program, added to the running first one; `restBytes` says where it comes from.
let rest;

// Its styles are in it; those for paper come last.
function dress({ module }) {
  const style = document.createElement('style');
  style.textContent = new TextDecoder().decode(WebAssembly.Module.customSections(module, 'style')[0]);
  document.querySelector('style[media]').before(style);
}

async function addRest(tell, whom) {
  let here = true;
  try {
    // All that the part calls, the first one has; a failure is forgotten, so that it can be tried again.
    rest ??= restBytes().then(bytes => WebAssembly.instantiate(whole(new Uint8Array(bytes)), { __wasm_split: wasm })).then(dress);
    await rest;
  } catch (missing) {
    rest = undefined;
    here = false;
  }
  wasm.__indirect_function_table.get(tell)(whom, here);
}
