// In the page of a single file everything is here: packed, and written as base64.
async function unpacked(id) {
  const packed = Uint8Array.from(atob(document.getElementById(id).textContent), letter => letter.charCodeAt(0));
  return new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate'))).arrayBuffer();
}

// Called by the glue. Where a part cannot be read, the file is damaged, and none of it can be trusted.
async function restBytes() {
  try {
    return await unpacked('packed-rest');
  } catch (reason) {
    rescue.cannotLoad(reason);
    throw reason;
  }
}

// The last line of the glue hands its start over.
let start;
async function load() {
  if (typeof DecompressionStream !== 'function') return rescue.cannotRun('DecompressionStream');
  const [glue, program] = await Promise.all(['packed-glue', 'packed'].map(unpacked));
  const script = document.createElement('script');
  script.type = 'module';
  script.textContent = new TextDecoder().decode(glue);
  const begin = await new Promise((done, failed) => {
    start = done;
    script.onerror = failed;
    document.body.append(script);
  });
  return begin({ module_or_path: program });
}
