//! The code of a program taken apart for its way to the browser: operations by themselves, and by itself each kind of
//! what belongs to them, so that what packs them finds more of the same. `src/shell/whole.js` puts it together again.
//!
//! The file: a byte that no program begins with; how long the program is at most and how many functions it has; a way
//! for each operation; how long each stream is; the streams.

use crate::Outcome;
use crate::whole::{same, whole};
use wasmparser::{FunctionBody, Parser, Payload};

/// What the file begins with; a program begins with 0.
pub(crate) const APART: u8 = 1;

/// What is kept by itself. The numbers are those of `whole.js`.
#[derive(Clone, Copy, PartialEq, Eq)]
#[expect(dead_code, reason = "some are reached from the one before")]
pub(crate) enum Stream {
    Before = 0,
    Behind = 1,
    Operations = 2,
    Locals = 3,
    Labels = 4,
    Blocks = 5,
    Globals = 6,
    Calls = 7,
    Constants = 8,
    /// Constants that are added to something. Each of the next three is followed by what concerns the function's frame.
    Added = 9,
    AddedToFrame = 10,
    /// How far from a place something is read.
    Reads = 11,
    ReadsOfFrame = 12,
    /// How far from a place something is written.
    Writes = 13,
    WritesToFrame = 14,
    LongConstants = 15,
    Tables = 16,
    Indirect = 17,
    Declared = 18,
    /// Addresses of data: the lowest byte, then those above it.
    Addresses = 19,
    AddressesMiddle = 20,
    AddressesHigh = 21,
    Fractions = 22,
}

pub(crate) const STREAMS: usize = Stream::Fractions as usize + 1;

/// How what belongs to an operation is read: its stream, and one of these in the upper three bits. None of them is one
/// number; for what is read or written it is [`PLACE`] and the power of two at which it lies.
pub(crate) const EIGHT_BYTES: u8 = 1 << 5;
pub(crate) const SEVERAL: u8 = 2 << 5;
pub(crate) const TWO: u8 = 3 << 5;
pub(crate) const PLACE: u8 = 4;

/// A block, a loop and a condition, which end as functions do.
pub(crate) const OPENING: std::ops::RangeInclusive<u8> = 0x02..=0x04;
pub(crate) const END: u8 = 0x0b;
pub(crate) const GET: u8 = 0x20;
pub(crate) const TEE: u8 = 0x22;
pub(crate) const CONSTANT: u8 = 0x41;
pub(crate) const ADD: u8 = 0x6a;
pub(crate) const FURTHER: u8 = 0xfc;
/// Not WebAssembly's: a constant that is an address of data, and one that is added to what stands before it.
pub(crate) const ADDRESS: u8 = 0xf0;
pub(crate) const ADDED: u8 = 0xf1;

/// Where data begin, and what is beyond any.
pub(crate) const DATA: std::ops::Range<i64> = 0x10_0000..0x20_0000;

/// The way of an operation; none where it is not known here.
fn way(operation: u8) -> Option<u8> {
    let place = |stream: Stream, power: u8| stream as u8 | (PLACE + power) << 5;
    Some(match operation {
        0x00 | 0x01 | 0x05 | END | 0x0f | 0x1a | 0x1b | 0x45..=0xc4 => 0,
        _ if OPENING.contains(&operation) => Stream::Blocks as u8,
        0x0c | 0x0d => Stream::Labels as u8,
        0x0e => Stream::Tables as u8 | SEVERAL,
        0x10 => Stream::Calls as u8,
        0x11 => Stream::Indirect as u8 | TWO,
        GET..=TEE => Stream::Locals as u8,
        0x23 | 0x24 | 0x3f | 0x40 => Stream::Globals as u8,
        0x2c | 0x2d | 0x30 | 0x31 => place(Stream::Reads, 0),
        0x2e | 0x2f | 0x32 | 0x33 => place(Stream::Reads, 1),
        0x28 | 0x2a | 0x34 | 0x35 => place(Stream::Reads, 2),
        0x29 | 0x2b => place(Stream::Reads, 3),
        0x3a | 0x3c => place(Stream::Writes, 0),
        0x3b | 0x3d => place(Stream::Writes, 1),
        0x36 | 0x38 | 0x3e => place(Stream::Writes, 2),
        0x37 | 0x39 => place(Stream::Writes, 3),
        CONSTANT => Stream::Constants as u8,
        0x42 => Stream::LongConstants as u8,
        0x44 => Stream::Fractions as u8 | EIGHT_BYTES,
        _ => return None,
    })
}

/// The program taken apart, once it is shown that it can be put together again.
pub fn apart(wasm: &[u8]) -> Outcome<Vec<u8>> {
    let file = taken_apart(wasm)?;
    if same(wasm, &whole(&file)?)? {
        Ok(file)
    } else {
        Err("what was taken apart is another program when it is put together: see xtask/src/apart.rs".to_owned())
    }
}

fn taken_apart(wasm: &[u8]) -> Outcome<Vec<u8>> {
    let strange = |reason: wasmparser::BinaryReaderError| format!("the program cannot be taken apart ({reason})");
    let (mut streams, mut functions) = (Streams::default(), 0_u32);
    for payload in Parser::new(0).parse_all(wasm) {
        match payload.map_err(strange)? {
            Payload::CodeSectionStart { range, .. } => {
                // Before it stand its kind and its length, which `whole.js` writes anew.
                let (start, end) = (range.start as usize, range.end as usize);
                let length = (end - start).ilog2() as usize / 7 + 1;
                streams.put(Stream::Before, &wasm[..start - length - 1]);
                streams.put(Stream::Behind, &wasm[end..]);
            }
            Payload::CodeSectionEntry(body) => {
                functions += 1;
                streams.function(&body)?;
            }
            _ => {}
        }
    }
    let most = wasm.len() + 4 * functions as usize + 16;
    let mut file = vec![APART];
    let number = |file: &mut Vec<u8>, number: usize| {
        let number = u32::try_from(number).map_err(|_| "the program is too long to be taken apart".to_owned())?;
        file.extend(number.to_le_bytes());
        Outcome::Ok(())
    };
    number(&mut file, most)?;
    number(&mut file, functions as usize)?;
    file.extend((0..=u8::MAX).map(|operation| way(operation).unwrap_or(0)));
    for stream in &streams.0 {
        number(&mut file, stream.len())?;
    }
    Ok(file.into_iter().chain(streams.0.concat()).collect())
}

#[derive(Default)]
struct Streams([Vec<u8>; STREAMS]);

impl Streams {
    fn put(&mut self, stream: Stream, bytes: &[u8]) {
        self.0[stream as usize].extend(bytes);
    }

    fn put_by(&mut self, way: u8, near: bool, bytes: &[u8]) {
        self.0[usize::from(way & 31) + usize::from(near)].extend(bytes);
    }

    fn function(&mut self, body: &FunctionBody) -> Outcome {
        let strange = |reason: wasmparser::BinaryReaderError| format!("a function cannot be taken apart ({reason})");
        let bytes = body.as_bytes();
        let mut reader = body.get_operators_reader().map_err(strange)?;
        let (mut start, mut operations) = (0, Vec::new());
        loop {
            // First comes what is declared.
            let end = (reader.original_position() - body.range().start) as usize;
            operations.push(&bytes[start..end]);
            if reader.eof() {
                break;
            }
            start = end;
            reader.read().map_err(strange)?;
        }
        let mut operations = operations.into_iter().peekable();
        let declared = operations.next().unwrap_or_default();
        if declared.first().is_none_or(|groups| *groups > 127) {
            return Err("a function declares too much: teach xtask/src/apart.rs and src/shell/whole.js".to_owned());
        }
        self.put(Stream::Declared, declared);
        let (mut frame, mut beside) = (None, false);
        while let Some((&operation, with)) = operations.next().and_then(<[u8]>::split_first) {
            let near = std::mem::take(&mut beside);
            match operation {
                CONSTANT if DATA.contains(&signed(with)) => {
                    self.put(Stream::Operations, &[ADDRESS]);
                    let address = (signed(with) - DATA.start).to_le_bytes();
                    for (stream, byte) in (Stream::Addresses as usize..).zip(&address[..3]) {
                        self.0[stream].push(*byte);
                    }
                }
                CONSTANT if operations.next_if_eq(&[ADD].as_slice()).is_some() => {
                    self.put(Stream::Operations, &[ADDED]);
                    self.put_by(Stream::Added as u8, near, with);
                }
                FURTHER => {
                    // What may follow are zeros, by the number of the operation.
                    if !matches!(with, [0..=7] | [10, 0, 0] | [11, 0]) {
                        return Err(format!("operation fc {with:x?} is not known: teach xtask/src/apart.rs"));
                    }
                    self.put(Stream::Operations, &[FURTHER]);
                    self.put(Stream::Operations, &with[..1]);
                }
                _ => {
                    let way = way(operation)
                        .ok_or_else(|| format!("operation {operation:x} is not known: teach xtask/src/apart.rs"))?;
                    self.put(Stream::Operations, &[operation]);
                    if way & !31 == SEVERAL && with[0] > 127 {
                        return Err("a branch leads to too many places: teach apart.rs and whole.js".to_owned());
                    }
                    match way >> 5 {
                        // How it lies is only a hint, and the usual one is as good.
                        PLACE.. => self.put_by(way, near, &with[1..]),
                        _ => self.put_by(way, false, with),
                    }
                    // What is read beside the frame has a stream of its own: the frame is what is first kept.
                    if operation == TEE {
                        frame = frame.or(Some(with[0]));
                    }
                    beside = operation == GET && frame == Some(with[0]);
                }
            }
        }
        Ok(())
    }
}

/// A signed number as WebAssembly writes it.
fn signed(bytes: &[u8]) -> i64 {
    let value = bytes.iter().rev().fold(0, |value, byte| value << 7 | i64::from(byte & 127));
    let bits = 7 * bytes.len();
    value << (64 - bits) >> (64 - bits)
}
