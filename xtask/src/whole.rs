//! A program that was taken apart, put together again as `src/shell/whole.js` does it in the browser: the build does so
//! before it publishes one, and a journey holds the two against each other, byte for byte.

use crate::Outcome;
use crate::apart::{
    ADD, ADDED, ADDRESS, APART, CONSTANT, DATA, EIGHT_BYTES, END, FURTHER, GET, OPENING, PLACE, SEVERAL, STREAMS,
    Stream, TEE, TWO,
};
use wasm_encoder::Module;
use wasm_encoder::reencode::{Error, Reencode};
use wasmparser::Parser;

/// The program.
pub fn whole(file: &[u8]) -> Outcome<Vec<u8>> {
    Pieces::read(file)?.program().ok_or_else(|| "what was taken apart ends too early".to_owned())
}

/// Whether two programs are the same but for how their numbers are written and for how what they read is said to lie.
pub fn same(a: &[u8], b: &[u8]) -> Outcome<bool> {
    let plain = |wasm| {
        let mut plain = Module::new();
        let written = Plain.parse_core_module(&mut plain, Parser::new(0), wasm);
        written.map_err(|reason| format!("the program cannot be read again ({reason})"))?;
        Outcome::Ok(plain.finish())
    };
    Ok(plain(a)? == plain(b)?)
}

/// Writes numbers in as few bytes as there can be, and the usual way to lie.
struct Plain;

impl Reencode for Plain {
    type Error = std::convert::Infallible;

    fn mem_arg(&mut self, read: wasmparser::MemArg) -> Result<wasm_encoder::MemArg, Error<Self::Error>> {
        Ok(wasm_encoder::MemArg {
            offset: read.offset,
            align: read.max_align.into(),
            memory_index: self.memory_index(read.memory)?,
        })
    }
}

/// The streams, each read from its beginning.
struct Pieces<'a> {
    functions: u32,
    ways: &'a [u8],
    streams: Vec<std::slice::Iter<'a, u8>>,
    out: Vec<u8>,
}

impl<'a> Pieces<'a> {
    fn read(file: &'a [u8]) -> Outcome<Self> {
        let short = || "this is no program that was taken apart".to_owned();
        let rest = file.strip_prefix(&[APART]).ok_or_else(short)?;
        let (numbers, rest) = rest.split_at_checked(8).ok_or_else(short)?;
        let (ways, rest) = rest.split_at_checked(256).ok_or_else(short)?;
        let (lengths, mut rest) = rest.split_at_checked(4 * STREAMS).ok_or_else(short)?;
        let number = |bytes: &[u8]| bytes.iter().rev().fold(0_u32, |number, byte| number << 8 | u32::from(*byte));
        let mut streams = Vec::new();
        for length in lengths.chunks_exact(4) {
            let stream;
            (stream, rest) = rest.split_at_checked(number(length) as usize).ok_or_else(short)?;
            streams.push(stream.iter());
        }
        Ok(Self { functions: number(&numbers[4..]), ways, streams, out: Vec::new() })
    }

    fn next(&mut self, stream: usize) -> Option<u8> {
        self.streams[stream].next().copied()
    }

    /// A number into the program; its last byte.
    fn pass(&mut self, stream: usize) -> Option<u8> {
        loop {
            let byte = self.next(stream)?;
            self.out.push(byte);
            if byte < 128 {
                return Some(byte);
            }
        }
    }

    /// A number of five bytes, whatever it is.
    fn write(&mut self, place: usize, value: usize) {
        let bytes: [u8; 5] = std::array::from_fn(|at| (value >> (7 * at)) as u8 & 127 | if at < 4 { 128 } else { 0 });
        self.out[place..place + 5].copy_from_slice(&bytes);
    }

    fn room(&mut self) -> usize {
        self.out.extend([0; 5]);
        self.out.len() - 5
    }

    fn program(mut self) -> Option<Vec<u8>> {
        let before = self.streams[Stream::Before as usize].as_slice();
        self.out.extend(before);
        self.out.push(wasm_encoder::SectionId::Code as u8);
        let section = self.room();
        let count = self.room();
        self.write(count, self.functions as usize);
        for _ in 0..self.functions {
            let size = self.room();
            self.function()?;
            self.write(size, self.out.len() - size - 5);
        }
        self.write(section, self.out.len() - section - 5);
        let behind = self.streams[Stream::Behind as usize].as_slice();
        self.out.extend(behind);
        Some(self.out)
    }

    fn function(&mut self) -> Option<()> {
        for _ in 0..2 * u16::from(self.pass(Stream::Declared as usize)?) {
            self.pass(Stream::Declared as usize)?;
        }
        let (mut open, mut frame, mut beside) = (1, None, false);
        while open > 0 {
            let operation = self.next(Stream::Operations as usize)?;
            let near = usize::from(std::mem::take(&mut beside));
            match operation {
                ADDRESS => {
                    let mut address = DATA.start as usize;
                    for byte in 0..3 {
                        address += usize::from(self.next(Stream::Addresses as usize + byte)?) << (8 * byte);
                    }
                    self.out.push(CONSTANT);
                    let place = self.room();
                    self.write(place, address);
                    self.out.pop();
                    self.out[place + 3] &= 127;
                }
                ADDED => {
                    self.out.push(CONSTANT);
                    self.pass(Stream::Added as usize + near)?;
                    self.out.push(ADD);
                }
                FURTHER => {
                    let further = self.next(Stream::Operations as usize)?;
                    self.out.extend([FURTHER, further]);
                    self.out.extend(match further {
                        10 => &[0, 0][..],
                        11 => &[0],
                        _ => &[],
                    });
                }
                _ => {
                    open += i32::from(OPENING.contains(&operation)) - i32::from(operation == END);
                    self.out.push(operation);
                    let way = self.ways[usize::from(operation)];
                    let stream = usize::from(way & 31);
                    match way & !31 {
                        EIGHT_BYTES => {
                            for _ in 0..8 {
                                let byte = self.next(stream)?;
                                self.out.push(byte);
                            }
                        }
                        SEVERAL => {
                            for _ in 0..=self.pass(stream)? {
                                self.pass(stream)?;
                            }
                        }
                        TWO => {
                            self.pass(stream)?;
                            self.pass(stream)?;
                        }
                        0 if stream == 0 => {}
                        0 => {
                            let local = self.streams[stream].as_slice().first().copied();
                            self.pass(stream)?;
                            if operation == TEE {
                                frame = frame.or(local);
                            }
                            beside = operation == GET && frame == local;
                        }
                        place => {
                            self.out.push((place >> 5) - PLACE);
                            self.pass(stream + near)?;
                        }
                    }
                }
            }
        }
        Some(())
    }
}
