// The end of the glue: adds the second part of the program to the running first one; `restBytes` says where it is.
let rest;

async function addRest(tell, whom) {
  let here = true;
  try {
    // All that the part calls, the first one has; a failure is forgotten, so that it can be tried again.
    rest ??= restBytes().then(bytes => WebAssembly.instantiate(bytes, { __wasm_split: wasm }));
    await rest;
  } catch (missing) {
    rest = undefined;
    here = false;
  }
  wasm.__indirect_function_table.get(tell)(whom, here);
}
