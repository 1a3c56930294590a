//! The program put in an order that packs well, under names that take no room. It does what it did before.
//!
//! Like beside like: functions stand by their type and then by their bytes, which saves two bytes of a hundred when a
//! host packs them. What the program takes from the glue has names of thirty letters, half of them chance, in both.

use crate::Outcome;
use std::fmt::Write;
use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{CodeSection, FunctionSection, ImportSection, Module};
use wasmparser::{
    CodeSectionReader, CustomSectionReader, FunctionSectionReader, ImportSectionReader, Parser, Payload, TypeRef,
};

/// Under which name wasm-bindgen lets the program take what the glue gives, and which stands there afterwards.
const GLUE: [&str; 2] = ["./linkwright_bg.js", "."];

/// The program with its functions in order, without names and the like; `names` for what it takes from the glue.
pub fn packed(wasm: &[u8], names: Vec<String>) -> Outcome<Vec<u8>> {
    let read = Functions::read(wasm)?;
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
    let mut rename = |old: &str, new: &str| {
        let once = glue.matches(old).count() == 1;
        glue = glue.replacen(old, new, 1);
        once.then_some(()).ok_or_else(|| format!("“{old}” is not once in the glue: teach xtask/src/pack.rs"))
    };
    for (index, name) in Functions::read(wasm)?.names.iter().enumerate() {
        names.push(short(index));
        rename(&format!("\n{name}:"), &format!("\n{}:", names[index]))?;
    }
    let [old, new] = GLUE.map(|name| format!("\"{name}\":"));
    rename(&old, &new)?;
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
                        read.names.extend((import.module == GLUE[0]).then_some(import.name));
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

type Strange = Error<std::convert::Infallible>;

impl Reencode for Pack {
    type Error = std::convert::Infallible;

    fn function_index(&mut self, function: u32) -> Result<u32, Strange> {
        let own = function.checked_sub(self.taken).map(|own| self.places[own as usize]);
        Ok(own.unwrap_or(function))
    }

    fn parse_custom_section(&mut self, _: &mut Module, _: CustomSectionReader<'_>) -> Result<(), Strange> {
        Ok(())
    }

    fn parse_import_section(
        &mut self,
        imports: &mut ImportSection,
        section: ImportSectionReader<'_>,
    ) -> Result<(), Strange> {
        for import in section.into_imports() {
            let import = import?;
            let kind = self.entity_type(import.ty)?;
            match if import.module == GLUE[0] { self.names.next() } else { None } {
                Some(name) => imports.import(GLUE[1], &name, kind),
                None => imports.import(import.module, import.name, kind),
            };
        }
        Ok(())
    }

    fn parse_function_section(
        &mut self,
        functions: &mut FunctionSection,
        section: FunctionSectionReader<'_>,
    ) -> Result<(), Strange> {
        let kinds = section.into_iter().collect::<Result<Vec<u32>, _>>()?;
        for &function in &self.order {
            functions.function(kinds[function]);
        }
        Ok(())
    }

    fn parse_code_section(&mut self, code: &mut CodeSection, section: CodeSectionReader<'_>) -> Result<(), Strange> {
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
    use wasm_encoder::{
        ConstExpr, ElementSection, Elements, EntityType, ExportKind, ExportSection, Function, TypeSection,
    };

    /// One function from the glue and three of its own, the last of which calls all others.
    fn program() -> Vec<u8> {
        let (mut module, mut types) = (Module::new(), TypeSection::new());
        types.ty().function([], []);
        let mut imports = ImportSection::new();
        imports.import(GLUE[0], "__wbg_say_5b446f51afd21013", EntityType::Function(0));
        let (mut functions, mut exports, mut code) = (FunctionSection::new(), ExportSection::new(), CodeSection::new());
        for calls in [&[0, 0][..], &[0], &[0, 1, 2]] {
            functions.function(0);
            let mut body = Function::new([]);
            for &call in calls {
                body.instructions().call(call);
            }
            body.instructions().end();
            code.function(&body);
        }
        exports.export("main", ExportKind::Func, 3);
        let mut elements = ElementSection::new();
        elements.active(None, &ConstExpr::i32_const(0), Elements::Functions([1, 2][..].into()));
        module.section(&types).section(&imports).section(&functions).section(&exports).section(&elements);
        module.section(&code);
        module.finish()
    }

    /// What a function does, told by what it calls, down to what comes from the glue.
    fn does(wasm: &[u8], function: u32) -> Outcome<String> {
        let read = Functions::read(wasm)?;
        let Some(own) = function.checked_sub(read.taken) else { return Ok("!".to_owned()) };
        // A call is two bytes here, after the count of locals and before the end.
        let (_, body) = read.all[own as usize];
        let calls: Outcome<Vec<String>> =
            body[1..].chunks_exact(2).map(|call| does(wasm, u32::from(call[1]))).collect();
        Ok(format!("({})", calls?.concat()))
    }

    fn main(wasm: &[u8]) -> u32 {
        let export = Parser::new(0).parse_all(wasm).find_map(|payload| match payload {
            Ok(Payload::ExportSection(all)) => all.into_iter().next()?.ok(),
            _ => None,
        });
        export.map_or(u32::MAX, |export| export.index)
    }

    #[test]
    fn in_order_it_does_what_it_did() -> Outcome {
        let before = program();
        let after = packed(&before, Vec::new())?;
        assert_ne!(before, after);
        let bodies = Functions::read(&after)?.all;
        assert!(bodies.is_sorted_by_key(|(_, body)| body.len()) || bodies.is_sorted(), "{bodies:?}");
        assert_eq!(does(&after, main(&after))?, "(!(!!)(!))");
        assert_eq!(does(&before, main(&before))?, "(!(!!)(!))");
        Ok(())
    }

    #[test]
    fn both_sides_use_the_new_name() -> Outcome {
        let glue = "import0 = {\n__wbg_say_5b446f51afd21013: function() {},\n};\n\"./linkwright_bg.js\": import0,";
        let (glue, names) = renamed(glue, &program())?;
        assert_eq!(glue, "import0 = {\na: function() {},\n};\n\".\": import0,");
        assert_eq!(names, ["a"]);
        let wasm = packed(&program(), names)?;
        assert!(!wasm.windows(5).any(|piece| piece == b"__wbg"));
        assert!(renamed("", &program()).is_err(), "another way of writing is noticed");
        Ok(())
    }

    #[test]
    fn no_two_names_are_one() {
        let names: std::collections::BTreeSet<String> = (0..3_000).map(short).collect();
        assert_eq!(names.len(), 3_000);
    }
}
