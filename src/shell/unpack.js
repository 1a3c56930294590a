// In the page of a single file everything is here, packed: each byte is one letter of windows-1252, but for those that a
// page would change or end at. They stand behind an `=`, moved by 64 (`letters` in xtask/src/single.rs).
const byteOf = new Uint8Array(65536);
[...new TextDecoder('windows-1252').decode(Uint8Array.from(Array(256).keys()))].forEach((letter, byte) => {
  byteOf[letter.charCodeAt(0)] = byte;
});

function packedBytes(id) {
  const text = document.getElementById(id).textContent;
  const bytes = new Uint8Array(text.length);
  let length = 0;
  for (let at = 0; at < text.length; at += 1) {
    const byte = byteOf[text.charCodeAt(at)];
    bytes[length++] = byte === 61 ? byteOf[text.charCodeAt(at += 1)] - 64 : byte;
  }
  return bytes.subarray(0, length);
}

function unpacked(id) {
  return new Response(new Blob([packedBytes(id)]).stream().pipeThrough(new DecompressionStream('deflate'))).arrayBuffer();
}

// The glue hands over its start when it runs.
let bound;
async function load() {
  if (typeof DecompressionStream !== 'function') return rescue.cannotRun('DecompressionStream');
  if (document.characterSet !== 'windows-1252') throw new Error(`The file was read as ${document.characterSet}, not as windows-1252, in which it was written.`);
  const [glue, wasm] = await Promise.all(['packed-glue', 'packed'].map(unpacked));
  const script = document.createElement('script');
  script.type = 'module';
  script.textContent = new TextDecoder().decode(glue);
  const start = await new Promise((done, failed) => {
    bound = done;
    script.onerror = failed;
    document.body.append(script);
  });
  return start(new Uint8Array(wasm));
}
