// The program travels with its code taken apart: operations by themselves, and by itself each kind of what belongs to
// them, which packs a sixth smaller. Here it is put together again; xtask/src/apart.rs takes it apart and names the ways.
function whole(bytes) {
  // The worker keeps a program that is whole already.
  if (!bytes[0]) return bytes;
  if (bytes[0] !== 1) throw new Error('What came is no part of the program.');
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  let at = 1;
  const number = () => view.getUint32((at += 4) - 4, true);
  const [most, functions] = [number(), number()];
  const ways = bytes.subarray(at, at += 256);
  const lengths = Array.from({ length: 23 }, number);
  const next = lengths.map(length => (at += length) - length);
  const out = new Uint8Array(most);
  let to = 0;
  const copy = (stream, count) => {
    out.set(bytes.subarray(next[stream], next[stream] += count), to);
    to += count;
  };
  // A number takes as many bytes as have their highest bit set, and one.
  const pass = stream => {
    let byte;
    do out[to++] = byte = bytes[next[stream]++]; while (byte > 127);
    return byte;
  };
  const write = (place, value) => {
    for (let bits = 0; bits < 28; bits += 7) out[place++] = value >> bits & 127 | 128;
    out[place] = 0;
  };

  copy(20, lengths[20]);
  out[to++] = 10;
  const section = to;
  write(to + 5, functions);
  to += 10;
  for (let left = functions; left; left--) {
    const start = to += 5;
    for (let groups = pass(16); groups; groups--) {
      pass(16);
      pass(16);
    }
    let open = 1, frame = -1, beside = 0;
    while (open) {
      if (to > most) throw new Error('A part of the program is damaged.');
      const operation = bytes[next[0]++], way = ways[operation], near = beside;
      beside = 0;
      out[to++] = operation;
      if (operation === 0xf0) {
        // An address of data.
        const address = 0x100000 + bytes[next[17]++] + (bytes[next[18]++] << 8) + (bytes[next[19]++] << 16);
        out[to - 1] = 0x41;
        write(to, address);
        out[to + 3] &= 127;
        to += 4;
      } else if (operation === 0xf1) {
        out[to - 1] = 0x41;
        pass(7 + near);
        out[to++] = 0x6a;
      } else if (operation === 0xfc) {
        const more = out[to++] = bytes[next[0]++];
        to += more === 10 ? 2 : more === 11 ? 1 : 0;
      } else {
        if (operation === 0x0b) open--;
        else if (operation > 1 && operation < 5) open++;
        const stream = way & 31, kind = way >> 5;
        if (kind > 3) {
          out[to++] = kind - 4;
          pass(stream + near);
        } else if (kind === 3) {
          pass(stream);
          pass(stream);
        } else if (kind === 2) {
          for (let left = pass(stream); left >= 0; left--) pass(stream);
        } else if (kind === 1) {
          copy(stream, 8);
        } else if (stream) {
          const local = bytes[next[1]];
          pass(stream);
          // What is read beside the frame of a function has streams of its own: its frame is what it first keeps.
          if (operation === 0x22 && frame < 0) frame = local;
          beside = +(operation === 0x20 && local === frame);
        }
      }
    }
    write(start - 5, to - start);
  }
  write(section, to - section - 5);
  copy(21, lengths[21]);
  return out.subarray(0, to);
}
