//! JSON as far as a file of builds needs it: a small value, a reader that says what is wrong, a writer people can read.
//!
//! The grammar is that of ECMA-404. A general JSON crate would cost a phone more than the whole rest of saving.

use crate::quantity::decimals::shortest;
use crate::quantity::digits;

/// A value. The members of a table stay in their order.
#[derive(Debug, Clone, PartialEq)]
pub enum Json {
    /// `null`
    Null,
    /// `true` or `false`
    Truth(bool),
    /// A number, always finite.
    Number(f64),
    /// A text.
    Text(String),
    /// Values in square brackets.
    List(Vec<Json>),
    /// Named values in curly brackets.
    Table(Vec<(String, Json)>),
}

/// Deeper than any file of ours, and shallow enough for any stack.
const DEEPEST: usize = 32;

/// What fits beside each other in one line of the written text.
const LINE: usize = 110;

impl Json {
    /// A text.
    pub fn text(words: &str) -> Self {
        Self::Text(words.to_string())
    }

    /// A member of a table, the first one of that name.
    pub fn get(&self, name: &str) -> Option<&Self> {
        self.members().iter().find(|(own, _)| own == name).map(|(_, value)| value)
    }

    /// The members of a table; none of anything else.
    pub fn members(&self) -> &[(String, Self)] {
        if let Self::Table(members) = self { members } else { &[] }
    }

    /// The values of a list; none of anything else.
    pub fn values(&self) -> &[Self] {
        if let Self::List(values) = self { values } else { &[] }
    }

    /// The words of a text.
    pub fn words(&self) -> Option<&str> {
        if let Self::Text(words) = self { Some(words) } else { None }
    }

    /// As text, indented, with a line break at the end.
    pub fn write(&self) -> String {
        let mut out = String::new();
        self.put(&mut out, Some(0));
        out + "\n"
    }

    /// Writes itself at a depth, or all in one line.
    fn put(&self, out: &mut String, depth: Option<usize>) {
        let (open, close, count) = match self {
            Self::Null => return out.push_str("null"),
            Self::Truth(truth) => return out.push_str(if *truth { "true" } else { "false" }),
            Self::Number(number) => return out.push_str(&shortest(*number)),
            Self::Text(words) => return quote(words, out),
            Self::List(values) => ('[', ']', values.len()),
            Self::Table(members) => ('{', '}', members.len()),
        };
        let depth = depth.filter(|depth| !self.fits(*depth));
        out.push(open);
        for at in 0..count {
            if at > 0 {
                out.push(',');
            }
            match depth {
                Some(depth) => new_line(out, depth + 1),
                None if at > 0 || open == '{' => out.push(' '),
                None => {}
            }
            let value = match self {
                Self::Table(members) => members.get(at).map(|(name, value)| {
                    quote(name, out);
                    out.push_str(": ");
                    value
                }),
                _ => self.values().get(at),
            };
            if let Some(value) = value {
                value.put(out, depth.map(|depth| depth + 1));
            }
        }
        match depth {
            Some(depth) => new_line(out, depth),
            None if open == '{' && count > 0 => out.push(' '),
            None => {}
        }
        out.push(close);
    }

    /// Whether it holds nothing but plain values that fit in one line.
    fn fits(&self, depth: usize) -> bool {
        let plain = |value: &Self| !matches!(value, Self::List(_) | Self::Table(_));
        let all = self.values().iter().all(plain) && self.members().iter().all(|(_, value)| plain(value));
        let mut line = String::new();
        if all {
            self.put(&mut line, None);
        }
        all && 2 * depth + line.chars().count() <= LINE
    }
}

fn new_line(out: &mut String, depth: usize) {
    out.push('\n');
    out.extend(std::iter::repeat_n("  ", depth));
}

fn quote(words: &str, out: &mut String) {
    out.push('"');
    for letter in words.chars() {
        match letter {
            '"' | '\\' => out.extend(['\\', letter]),
            '\n' => out.push_str("\\n"),
            letter if letter < ' ' => out.push_str(&format!("\\u{:04x}", u32::from(letter))),
            letter => out.push(letter),
        }
    }
    out.push('"');
}

/// Reads a text.
///
/// # Errors
/// A sentence with the line in which the text stops being JSON.
pub fn read(text: &str) -> Result<Json, String> {
    let mut reader = Reader { text, at: 0 };
    let value = reader.value(0).and_then(|value| {
        reader.skip();
        if reader.at == text.len() { Ok(value) } else { Err("more follows after its end") }
    });
    value.map_err(|what| {
        let before = text.get(..reader.at).unwrap_or_default();
        format!("In line {}: {what}.", before.matches('\n').count() + 1)
    })
}

struct Reader<'a> {
    text: &'a str,
    at: usize,
}

type Found<T> = Result<T, &'static str>;

impl Reader<'_> {
    fn rest(&self) -> &str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    fn next(&mut self) -> Option<char> {
        let letter = self.peek()?;
        self.at += letter.len_utf8();
        Some(letter)
    }

    /// Whether this comes next, and goes past it.
    fn take(&mut self, words: &str) -> bool {
        let there = self.rest().starts_with(words);
        self.at += if there { words.len() } else { 0 };
        there
    }

    fn skip(&mut self) {
        while matches!(self.peek(), Some(' ' | '\n' | '\r' | '\t')) {
            self.at += 1;
        }
    }

    fn value(&mut self, depth: usize) -> Found<Json> {
        self.skip();
        if depth > DEEPEST {
            return Err("it is nested too deeply");
        }
        match self.peek() {
            Some('{') => self.up_to("}", |reader| reader.member(depth)).map(Json::Table),
            Some('[') => self.up_to("]", |reader| reader.value(depth + 1)).map(Json::List),
            Some('"') => self.quoted().map(Json::Text),
            Some('-' | '0'..='9') => self.number(),
            _ if self.take("null") => Ok(Json::Null),
            _ if self.take("true") => Ok(Json::Truth(true)),
            _ if self.take("false") => Ok(Json::Truth(false)),
            None => Err("it ends too soon"),
            Some(_) => Err("no value begins like this"),
        }
    }

    /// Everything up to the closing bracket, one after the other with commas between.
    fn up_to<T>(&mut self, close: &str, one: impl Fn(&mut Self) -> Found<T>) -> Found<Vec<T>> {
        let mut all = Vec::new();
        self.at += 1;
        self.skip();
        if self.take(close) {
            return Ok(all);
        }
        loop {
            all.push(one(self)?);
            if self.ends(close)? {
                return Ok(all);
            }
        }
    }

    fn member(&mut self, depth: usize) -> Found<(String, Json)> {
        self.skip();
        let name = self.quoted()?;
        self.skip();
        if !self.take(":") {
            return Err("a colon is missing");
        }
        Ok((name, self.value(depth + 1)?))
    }

    /// Whether the list or table ends here; else a comma leads on.
    fn ends(&mut self, close: &str) -> Found<bool> {
        self.skip();
        if self.take(close) {
            Ok(true)
        } else if self.take(",") {
            Ok(false)
        } else {
            Err(if self.rest().is_empty() { "it ends too soon" } else { "a comma is missing" })
        }
    }

    fn number(&mut self) -> Found<Json> {
        let start = self.at;
        let digits = |reader: &mut Self| {
            let first = reader.at;
            while matches!(reader.peek(), Some('0'..='9')) {
                reader.at += 1;
            }
            reader.at - first
        };
        self.take("-");
        let zero = self.peek() == Some('0');
        let whole = digits(self);
        let mut good = whole == 1 || (whole > 1 && !zero);
        if self.take(".") {
            good &= digits(self) > 0;
        }
        if self.take("e") || self.take("E") {
            let _ = self.take("+") || self.take("-");
            good &= digits(self) > 0;
        }
        let number = self.text.get(start..self.at).and_then(digits::parse);
        number.filter(|number| good && number.is_finite()).map(Json::Number).ok_or("a number cannot be read")
    }

    fn quoted(&mut self) -> Found<String> {
        if !self.take("\"") {
            return Err("a quotation mark is missing");
        }
        let mut words = String::new();
        loop {
            words.push(match self.next().ok_or("a text does not end")? {
                '"' => return Ok(words),
                '\\' => match self.next().ok_or("a text does not end")? {
                    'n' => '\n',
                    't' => '\t',
                    'r' => '\r',
                    'b' => '\u{8}',
                    'f' => '\u{c}',
                    'u' => self.unicode()?,
                    letter @ ('"' | '\\' | '/') => letter,
                    _ => return Err("a backslash stands before a letter that takes none"),
                },
                letter if letter < ' ' => return Err("a text goes over the end of its line"),
                letter => letter,
            });
        }
    }

    /// Four digits after `\u`, or two times four for what lies beyond.
    fn unicode(&mut self) -> Found<char> {
        let wrong = "a letter given by its number cannot be read";
        let first = self.four_digits().ok_or(wrong)?;
        let mut number = first;
        if (0xd800..0xdc00).contains(&first) {
            let second = if self.take("\\u") { self.four_digits() } else { None };
            let second = second.and_then(|second| second.checked_sub(0xdc00)).filter(|second| *second < 0x400);
            number = 0x10000 + ((first - 0xd800) << 10) + second.ok_or(wrong)?;
        }
        char::from_u32(number).ok_or(wrong)
    }

    fn four_digits(&mut self) -> Option<u32> {
        let digits = self.rest().get(..4).filter(|four| four.bytes().all(|byte| byte.is_ascii_hexdigit()))?;
        let number = u32::from_str_radix(digits, 16).ok();
        self.at += 4;
        number
    }
}
