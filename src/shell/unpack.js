// In the page of a single file everything is here, packed as text.
function unpacked(id) {
  const packed = Uint8Array.from(atob(document.getElementById(id).textContent), it => it.charCodeAt(0));
  return new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate'))).arrayBuffer();
}

async function load() {
  if (typeof DecompressionStream !== 'function') return rescue.cannotRun('DecompressionStream');
  return __wbg_init({ module_or_path: await unpacked('packed') });
}

async function restBytes() {
  return unpacked('packed-rest');
}
