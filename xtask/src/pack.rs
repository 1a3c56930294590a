//! The program put in an order that packs well, under names that take no room. It does what it did before.
//!
//! Like beside like: functions stand by their type and then by their bytes, so that what packs them finds more of the
//! same. What the program takes from the glue has names of thirty letters, half of them a hash that nothing packs, in
//! the program and in the glue; they become one letter or two.

use crate::Outcome;
use std::fmt::Write;
use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{CodeSection, FunctionSection, ImportSection, Module};
use wasmparser::{
    CodeSectionReader, CustomSectionReader, FunctionSectionReader, ImportSectionReader, Parser, Payload, TypeRef,
};

/// What wasm-bindgen calls the glue in the program, and what it is called afterwards.
const GLUE: &str = "./linkwright_bg.js";
const SHORT_GLUE: &str = ".";

/// The program with its functions in order, without custom sections; `names` for what it takes from the glue.
pub fn packed(wasm: &[u8], names: Vec<String>) -> Outcome<Vec<u8>> {
    let read = Functions::read(wasm)?;
    if read.names.len() != names.len() {
        return Err(format!("{} names for {} functions of the glue", names.len(), read.names.len()));
    }
    let mut order: Vec<usize> = (0..read.all.len()).collect();
    order.sort_by_key(|&function| read.all[function]);
    let mut places = vec![0; order.len()];
    for (place, &function) in (read.taken..).zip(&order) {
        places[function] = place;
    }
    let mut module = Module::new();
    let mut pack = Pack { taken: read.taken, order, places, names: names.into_iter() };
    let written = pack.parse_core_module(&mut module, Parser::new(0), wasm);
    written.map_err(|reason| format!("the program cannot be put in order ({reason})"))?;
    Ok(module.finish())
}

/// The glue with other names for what it gives to the program, and these names in the program's order.
pub fn renamed(glue: &str, wasm: &[u8]) -> Outcome<(String, Vec<String>)> {
    let (mut glue, mut names) = (glue.to_owned(), Vec::new());
    let mut rename = |old: String, new: String| {
        if glue.matches(&old).count() != 1 {
            return Err(format!("“{old}” is not once in the glue: teach xtask/src/pack.rs"));
        }
        glue = glue.replacen(&old, &new, 1);
        Ok(())
    };
    for (index, name) in Functions::read(wasm)?.names.iter().enumerate() {
        let short = short(index);
        rename(format!("\n{name}:"), format!("\n{short}:"))?;
        names.push(short);
    }
    rename(format!("\"{GLUE}\":"), format!("\"{SHORT_GLUE}\":"))?;
    Ok((glue, names))
}

/// `a`, `b`, … `z`, `a1`, `b1`, …
fn short(index: usize) -> String {
    let mut name = char::from(b'a' + (index % 26) as u8).to_string();
    if index >= 26 {
        // Writing into a string cannot fail.
        let _ = write!(name, "{}", index / 26);
    }
    name
}

/// What a program says of its functions.
#[derive(Default)]
struct Functions<'a> {
    /// How many it takes from elsewhere: these come first.
    taken: u32,
    /// The names of those that the glue gives.
    names: Vec<&'a str>,
    /// Type and bytes of its own.
    all: Vec<(u32, &'a [u8])>,
}

impl<'a> Functions<'a> {
    fn read(wasm: &'a [u8]) -> Outcome<Self> {
        let strange = |reason| format!("the program cannot be read ({reason})");
        let (mut read, mut types) = (Self::default(), Vec::new());
        for payload in Parser::new(0).parse_all(wasm) {
            match payload.map_err(strange)? {
                Payload::ImportSection(all) => {
                    for import in all.into_imports() {
                        let import = import.map_err(strange)?;
                        read.taken += u32::from(matches!(import.ty, TypeRef::Func(_)));
                        if import.module == GLUE {
                            read.names.push(import.name);
                        }
                    }
                }
                Payload::FunctionSection(all) => types = all.into_iter().collect::<Result<_, _>>().map_err(strange)?,
                Payload::CodeSectionEntry(body) => {
                    let kind = *types.get(read.all.len()).ok_or("a function without a type")?;
                    read.all.push((kind, body.as_bytes()));
                }
                _ => {}
            }
        }
        Ok(read)
    }
}

/// Writes a program anew.
struct Pack {
    taken: u32,
    /// Which of the functions stands at each place.
    order: Vec<usize>,
    /// By which number each is called then.
    places: Vec<u32>,
    /// What the glue gives, by its new names.
    names: std::vec::IntoIter<String>,
}

type Failed = Error<std::convert::Infallible>;

impl Reencode for Pack {
    type Error = std::convert::Infallible;

    fn function_index(&mut self, function: u32) -> Result<u32, Failed> {
        let own = function.checked_sub(self.taken).map(|own| self.places[own as usize]);
        Ok(own.unwrap_or(function))
    }

    fn parse_custom_section(&mut self, _: &mut Module, _: CustomSectionReader<'_>) -> Result<(), Failed> {
        Ok(())
    }

    fn parse_import_section(
        &mut self,
        imports: &mut ImportSection,
        section: ImportSectionReader<'_>,
    ) -> Result<(), Failed> {
        for import in section.into_imports() {
            let import = import?;
            let kind = self.entity_type(import.ty)?;
            let short = if import.module == GLUE { self.names.next() } else { None };
            match short {
                Some(name) => imports.import(SHORT_GLUE, &name, kind),
                None => imports.import(import.module, import.name, kind),
            };
        }
        Ok(())
    }

    fn parse_function_section(
        &mut self,
        functions: &mut FunctionSection,
        section: FunctionSectionReader<'_>,
    ) -> Result<(), Failed> {
        let kinds = section.into_iter().collect::<Result<Vec<u32>, _>>()?;
        for &function in &self.order {
            functions.function(kinds[function]);
        }
        Ok(())
    }

    fn parse_code_section(&mut self, code: &mut CodeSection, section: CodeSectionReader<'_>) -> Result<(), Failed> {
        let bodies = section.into_iter().collect::<Result<Vec<_>, _>>()?;
        for function in self.order.clone() {
            self.parse_function_body(code, bodies[function].clone())?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::holds;
    use wasm_encoder::{
        ConstExpr, ElementSection, Elements, EntityType, ExportKind, ExportSection, Function, TypeSection, ValType,
    };
    use wasmparser::ElementItems;

    /// One function from the glue and four of its own: the third takes a number, the last calls all others.
    fn program() -> Vec<u8> {
        let (mut module, mut types) = (Module::new(), TypeSection::new());
        types.ty().function([ValType::I32], []);
        types.ty().function([], []);
        let mut imports = ImportSection::new();
        imports.import(GLUE, "__wbg_say_5b446f51afd21013", EntityType::Function(1));
        let (mut functions, mut exports, mut code) = (FunctionSection::new(), ExportSection::new(), CodeSection::new());
        for (kind, calls) in [(1, &[0, 0][..]), (1, &[0]), (0, &[0, 0, 0]), (1, &[0, 1, 2, 3])] {
            functions.function(kind);
            let mut body = Function::new([]);
            for &call in calls {
                body.instructions().call(call);
            }
            body.instructions().end();
            code.function(&body);
        }
        exports.export("main", ExportKind::Func, 4);
        let mut elements = ElementSection::new();
        elements.active(None, &ConstExpr::i32_const(0), Elements::Functions([1, 2, 3][..].into()));
        module.section(&types).section(&imports).section(&functions).section(&exports).section(&elements);
        module.section(&code);
        module.finish()
    }

    /// What a function does: its type, and what it calls, down to what comes from the glue.
    fn does(wasm: &[u8], function: u32) -> Outcome<String> {
        let read = Functions::read(wasm)?;
        let Some(own) = function.checked_sub(read.taken) else { return Ok("!".to_owned()) };
        // A call is two bytes here, after the count of locals and before the end.
        let (kind, body) = read.all[own as usize];
        let calls: Outcome<Vec<String>> =
            body[1..].chunks_exact(2).map(|call| does(wasm, u32::from(call[1]))).collect();
        Ok(format!("{kind}({})", calls?.concat()))
    }

    /// What is exported and what stands in the table does.
    fn all(wasm: &[u8]) -> Outcome<Vec<String>> {
        let mut named = Vec::new();
        for payload in Parser::new(0).parse_all(wasm) {
            match payload.map_err(|reason| reason.to_string())? {
                Payload::ExportSection(all) => named.extend(all.into_iter().flatten().map(|export| export.index)),
                Payload::ElementSection(all) => {
                    for element in all.into_iter().flatten() {
                        let ElementItems::Functions(functions) = element.items else { continue };
                        named.extend(functions.into_iter().flatten());
                    }
                }
                _ => {}
            }
        }
        named.into_iter().map(|function| does(wasm, function)).collect()
    }

    #[test]
    fn in_order_it_does_what_it_did() -> Outcome {
        let (before, told) = (program(), ["1(!1(!!)1(!)0(!!!))", "1(!!)", "1(!)", "0(!!!)"]);
        assert_eq!(all(&before)?, told);
        let after = packed(&before, vec!["a".to_owned()])?;
        assert_eq!(all(&after)?, told);
        let order: Vec<(u32, usize)> =
            Functions::read(&after)?.all.iter().map(|(kind, body)| (*kind, body.len())).collect();
        assert_eq!(order, [(0, 8), (1, 4), (1, 6), (1, 10)], "by type, then by bytes");
        Ok(())
    }

    #[test]
    fn both_sides_use_the_new_name() -> Outcome {
        let glue = "import0 = {\n__wbg_say_5b446f51afd21013: function() {},\n};\n\"./linkwright_bg.js\": import0,";
        let (glue, names) = renamed(glue, &program())?;
        assert_eq!(glue, "import0 = {\na: function() {},\n};\n\".\": import0,");
        assert_eq!(names, ["a"]);
        assert!(!holds(&packed(&program(), names)?, "__wbg"));
        assert!(renamed("", &program()).is_err(), "another way of writing is noticed");
        assert!(packed(&program(), Vec::new()).is_err(), "a missing name is noticed");
        Ok(())
    }

    #[test]
    fn no_two_names_are_one() {
        let names: std::collections::BTreeSet<String> = (0..3_000).map(short).collect();
        assert_eq!(names.len(), 3_000);
    }
}
