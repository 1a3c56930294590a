// In the page of a single file everything is here, packed as text.
async function load() {
  if (typeof DecompressionStream !== 'function') return rescue.cannotRun('DecompressionStream');
  const packed = Uint8Array.from(atob(document.getElementById('packed').textContent), it => it.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate'));
  return __wbg_init({ module_or_path: await new Response(stream).arrayBuffer() });
}
