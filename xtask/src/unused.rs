//! What the linker cannot leave out though nobody calls it: three classes for streams.
//!
//! They come with the framework's way to call a server. Each of their functions is exported to scripts, and an export
//! counts as used. They are 16 KB of the program and 7 KB of its glue.

use crate::{Outcome, holds};
use wasm_encoder::{CustomSection, ExportSection, Module, RawSection};
use wasmparser::{BinaryReaderError, Parser, Payload};

/// In the names of all that they export.
const EXPORTED: &str = "intounderlying";
/// In what wasm-bindgen is told of them.
const TOLD: &str = "IntoUnderlying";
/// Where wasm-bindgen is told of everything.
const SECTION: &str = "__wasm_bindgen_unstable";

/// The linked program without the exports of those classes. All else stays byte by byte, so that relocations hold.
pub fn without_streams(wasm: &[u8]) -> Outcome<Vec<u8>> {
    let strange = |reason: BinaryReaderError| format!("the program cannot be read ({reason})");
    let mut module = Module::new();
    for payload in Parser::new(0).parse_all(wasm) {
        let payload = payload.map_err(strange)?;
        match &payload {
            Payload::ExportSection(all) => {
                let mut kept = ExportSection::new();
                for export in all.clone() {
                    let export = export.map_err(strange)?;
                    if !export.name.contains(EXPORTED) {
                        kept.export(export.name, export.kind.into(), export.index);
                    }
                }
                module.section(&kept);
            }
            Payload::CustomSection(custom) if custom.name() == SECTION => {
                let data = told(custom.data()).ok_or("wasm-bindgen is told things otherwise by now: see unused.rs")?;
                module.section(&CustomSection { name: SECTION.into(), data: data.into() });
            }
            // The bodies of functions stand within the section that came before.
            Payload::CodeSectionEntry(_) => {}
            other => {
                if let Some((id, range)) = other.as_section() {
                    let data = usize::try_from(range.start).ok().zip(usize::try_from(range.end).ok());
                    let data = data.and_then(|(start, end)| wasm.get(start..end)).ok_or("a section beyond the end")?;
                    module.section(&RawSection { id, data });
                }
            }
        }
    }
    Ok(module.finish())
}

/// The records without those of the classes. Each is a head and a body, with the length of either before it.
fn told(mut all: &[u8]) -> Option<Vec<u8>> {
    let mut kept = Vec::new();
    while !all.is_empty() {
        let (mut record, mut body) = (0, 0..0);
        for _ in 0..2 {
            let length = all.get(record..record + 4)?.try_into().ok()?;
            let end = record + 4 + usize::try_from(u32::from_le_bytes(length)).ok()?;
            (body, record) = (record + 4..end, end);
        }
        if !holds(all.get(body)?, TOLD) {
            kept.extend_from_slice(all.get(..record)?);
        }
        all = all.get(record..)?;
    }
    Some(kept)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn record(body: &str) -> Vec<u8> {
        let piece = |text: &str| [&(text.len() as u32).to_le_bytes()[..], text.as_bytes()].concat();
        [piece("{}"), piece(body)].concat()
    }

    #[test]
    fn records_are_taken_out_whole() {
        let all = [record("first"), record("an IntoUnderlyingSink"), record("last")].concat();
        assert_eq!(told(&all), Some([record("first"), record("last")].concat()));
        assert_eq!(told(&all[..all.len() - 1]), None, "what does not add up is not guessed at");
    }
}
