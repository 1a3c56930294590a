// The program travels with its code taken apart: operations by themselves, and by itself each kind of what belongs to
// them, which packs smaller. Here it is put together again. The file, as xtask/src/apart.rs writes it: a 1; how long the
// program is at most; how many functions it has; from byte 9 on a way for each of 256 operations, its stream and in the
// upper three bits how much to read there; from 265 on how long each of 23 streams is; from 357 on the streams. Of these,
// 0 and 1 are what stands before and behind the code, 2 operations, 5 blocks, 9 constants that are added, 18 what
// functions declare, 19 to 21 addresses of data; the other numbers are known by the ways alone.
function whole(bytes) {
  // The worker keeps a program that is whole already.
  if (!bytes[0]) return bytes;
  if (bytes[0] !== 1) throw new Error('What came is no part of the program.');
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const most = view.getUint32(1, true), functions = view.getUint32(5, true);
  const ways = bytes.subarray(9, 265);
  // Where each stream is read next; what is read in one go begins where the one before ends.
  const next = new Int32Array(24);
  for (let stream = 0, at = 357; stream < 23; stream++) {
    next[stream] = at;
    next[stream + 1] = at += view.getUint32(265 + 4 * stream, true);
  }
  if (next[23] !== bytes.length) throw new Error('A part of the program is damaged.');
  const before = bytes.subarray(next[0], next[1]), behind = bytes.subarray(next[1], next[2]);
  const out = new Uint8Array(most);
  // A number takes as many bytes as have their highest bit set, and one. Lengths are told when they are known, in five.
  const write = (place, value) => {
    for (let bits = 0; bits < 28; bits += 7) out[place++] = value >> bits & 127 | 128;
    out[place] = 0;
  };
  out.set(before);
  let to = before.length;
  out[to++] = 10;
  const section = to;
  write(to + 5, functions);
  to += 10;
  for (let left = functions; left; left--) {
    const start = to += 5;
    for (let numbers = 1 + 2 * bytes[next[18]]; numbers;) {
      if (!((out[to++] = bytes[next[18]++]) > 127)) numbers--;
    }
    // What is read beside the frame of a function has streams of its own: the frame is what it first keeps.
    let open = 1, frame = -1, near = 0;
    while (open) {
      if (to > most) throw new Error('A part of the program is damaged.');
      const operation = out[to++] = bytes[next[2]++];
      const kind = ways[operation] >> 5;
      let stream = ways[operation] & 31, numbers = 1;
      if (!stream) {
        if (operation === 0x0b) {
          open--;
        } else if (operation === 0xf0) {
          // A constant that is an address of data.
          const address = 0x100000 + bytes[next[19]++] + (bytes[next[20]++] << 8) + (bytes[next[21]++] << 16);
          out[to - 1] = 0x41;
          write(to, address);
          out[to + 3] &= 127;
          to += 4;
        } else if (operation === 0xf1) {
          // A constant that is added.
          out[to - 1] = 0x41;
          do out[to] = bytes[next[9 + near]++]; while (out[to++] > 127);
          out[to++] = 0x6a;
        } else if (operation === 0xfc) {
          const further = out[to++] = bytes[next[2]++];
          to += further === 10 ? 2 : further === 11 ? 1 : 0;
        }
        near = 0;
        continue;
      }
      const first = bytes[next[stream]];
      if (kind > 3) {
        out[to++] = kind - 4;
        stream += near;
      } else if (kind) {
        numbers = [8, first + 2, 2][kind - 1];
      } else if (stream === 5) {
        open++;
      }
      while (numbers) {
        // Behind the end of a damaged file stands nothing, which is a number's end too.
        if (!((out[to++] = bytes[next[stream]++]) > 127) || kind === 1) numbers--;
      }
      if (operation === 0x22 && frame < 0) frame = first;
      near = operation === 0x20 && first === frame ? 1 : 0;
    }
    write(start - 5, to - start);
  }
  write(section, to - section - 5);
  out.set(behind, to);
  return out.subarray(0, to + behind.length);
}
