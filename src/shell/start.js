// Starts the program: the end of the glue, where wasm-bindgen has a longer one for whatever a program may come in.
async function start(apart) {
  const { instance, module } = await WebAssembly.instantiate(whole(apart), __wbg_get_imports());
  return __wbg_finalize_init(instance, module);
}
export { start, whole };
