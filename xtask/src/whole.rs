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
    Pieces::read(file)?.program().ok_or_else(|| "what was taken apart does not fit together".to_owned())
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
        if !rest.is_empty() {
            return Err(short());
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
        let before = std::mem::take(&mut self.streams[Stream::Before as usize]).as_slice();
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
        let behind = std::mem::take(&mut self.streams[Stream::Behind as usize]).as_slice();
        self.out.extend(behind);
        // What is left over belongs to nothing.
        self.streams.iter().all(|stream| stream.as_slice().is_empty()).then_some(self.out)
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::apart::apart;
    use wasm_encoder::{
        BlockType, CodeSection, ConstExpr, CustomSection, DataSection, Function, FunctionSection, MemArg,
        MemorySection, MemoryType, TableSection, TypeSection, ValType,
    };

    /// Two functions with something of every kind that the build's programs hold, and a section behind them.
    fn program() -> Vec<u8> {
        let (mut module, mut types, mut functions) = (Module::new(), TypeSection::new(), FunctionSection::new());
        types.ty().function([ValType::I32], []);
        functions.function(0).function(0);
        let mut tables = TableSection::new();
        tables.table(wasm_encoder::TableType {
            element_type: wasm_encoder::RefType::FUNCREF,
            table64: false,
            minimum: 1,
            maximum: None,
            shared: false,
        });
        let mut memories = MemorySection::new();
        memories.memory(MemoryType {
            minimum: 32,
            maximum: None,
            memory64: false,
            shared: false,
            page_size_log2: None,
        });
        let place = |offset, align| MemArg { offset, align, memory_index: 0 };
        let mut first = Function::new([(3, ValType::I32), (200, ValType::F64)]);
        let mut code = first.instructions();
        code.i32_const(60).local_tee(1).i32_const(-9).i32_add().drop();
        code.local_get(1).i32_const(300).i32_add().i32_load(place(8, 2)).drop();
        code.local_get(1).i64_load(place(1 << 16, 0)).drop().local_get(0).i32_load8_u(place(3, 0)).drop();
        code.i32_const(0x10_0000).drop().i32_const(0x1f_ffff).drop().i32_const(0x20_0000).drop().i32_const(-1).drop();
        code.local_get(1).f64_const(std::f64::consts::PI.into()).f64_store(place(4, 0)).local_get(1).local_get(1);
        code.i32_store16(place(0, 1)).i64_const(i64::MIN).drop().local_get(150).i32_trunc_sat_f64_s().drop();
        code.i32_const(0).i32_const(0).i32_const(0).memory_copy(0, 0);
        code.i32_const(0).i32_const(0).i32_const(0).memory_fill(0).i32_const(1).memory_grow(0).drop();
        code.block(BlockType::Empty).loop_(BlockType::Empty).local_get(0).br_table([0, 1, 0], 1).end().end();
        code.local_get(0).if_(BlockType::Empty).else_().end().local_get(0).call(1);
        code.local_get(0).i32_const(0).call_indirect(0, 0).end();
        let mut second = Function::new([]);
        second.instructions().return_().end();
        let (mut all, mut data) = (CodeSection::new(), DataSection::new());
        all.function(&first).function(&second);
        data.active(0, &ConstExpr::i32_const(0x10_0000), *b"data");
        module.section(&types).section(&functions).section(&tables).section(&memories).section(&all).section(&data);
        module.section(&CustomSection { name: "style".into(), data: b"a{b:c}"[..].into() });
        module.finish()
    }

    #[test]
    fn what_was_taken_apart_is_put_together() -> Outcome {
        let program = program();
        let file = apart(&program)?;
        assert_ne!(file, program);
        let whole = whole(&file)?;
        assert!(same(&program, &whole)?);
        assert!(crate::holds(&whole, "a{b:c}") && crate::holds(&whole, "data"));
        let mut other = program;
        let constant = other.windows(2).position(|two| two == [CONSTANT, 60]).ok_or("no constant of 60")?;
        other[constant + 1] = 59;
        assert!(!same(&other, &whole)?, "another constant is another program");
        Ok(())
    }

    #[test]
    fn what_is_no_program_is_refused() -> Outcome {
        let file = apart(&program())?;
        assert!(whole(&program()).is_err() && whole(&[]).is_err());
        for length in [200, file.len() / 2, file.len() - 1] {
            assert!(whole(&file[..length]).is_err(), "the first {length} bytes");
        }
        let mut short = file;
        // The stream of operations seems to have none.
        short[1 + 8 + 256..][..4].fill(0);
        assert!(whole(&short).is_err());
        Ok(())
    }
}
