//! Reads a formula text into a tree.

use super::{Comparator, Comparison, Function, Term};

/// What is wrong with a formula text, and where (counted in characters).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Misspelled {
    /// Characters read before the fault.
    pub at: usize,
    /// What was expected there.
    pub expected: &'static str,
}

/// Reads a formula text.
///
/// # Errors
/// [`Misspelled`] names the first character that does not fit the grammar.
pub fn parse(text: &str) -> Result<Term, Misspelled> {
    let mut reader = Reader::new(text);
    let term = reader.sum()?;
    reader.end()?;
    Ok(term)
}

/// Reads a validity condition: two terms with `≥ ≤ > <` between them.
///
/// # Errors
/// [`Misspelled`] names the first character that does not fit the grammar.
pub fn comparison(text: &str) -> Result<Comparison, Misspelled> {
    let mut reader = Reader::new(text);
    let left = reader.sum()?;
    let comparator = match reader.peek() {
        Some('≥') => Comparator::AtLeast,
        Some('≤') => Comparator::AtMost,
        Some('>') => Comparator::Above,
        Some('<') => Comparator::Below,
        _ => return reader.fault("≥, ≤, > or <"),
    };
    reader.at += 1;
    let right = reader.sum()?;
    reader.end()?;
    Ok(Comparison { left, comparator, right })
}

struct Reader {
    characters: Vec<char>,
    at: usize,
}

impl Reader {
    fn new(text: &str) -> Self {
        Self { characters: text.chars().collect(), at: 0 }
    }

    fn peek(&mut self) -> Option<char> {
        while self.characters.get(self.at).is_some_and(|c| c.is_whitespace()) {
            self.at += 1;
        }
        self.characters.get(self.at).copied()
    }

    fn take(&mut self, wanted: char) -> bool {
        let found = self.peek() == Some(wanted);
        if found {
            self.at += 1;
        }
        found
    }

    fn fault<T>(&self, expected: &'static str) -> Result<T, Misspelled> {
        Err(Misspelled { at: self.at, expected })
    }

    fn end(&mut self) -> Result<(), Misspelled> {
        if self.peek().is_none() { Ok(()) } else { self.fault("the end of the text") }
    }

    fn sum(&mut self) -> Result<Term, Misspelled> {
        let mut left = self.product()?;
        loop {
            if self.take('+') {
                left = Term::Add(Box::new(left), Box::new(self.product()?));
            } else if self.take('−') || self.take('-') {
                left = Term::Subtract(Box::new(left), Box::new(self.product()?));
            } else {
                return Ok(left);
            }
        }
    }

    fn product(&mut self) -> Result<Term, Misspelled> {
        let mut left = self.signed()?;
        loop {
            if self.take('·') {
                left = Term::Multiply(Box::new(left), Box::new(self.signed()?));
            } else if self.take('/') {
                left = Term::Divide(Box::new(left), Box::new(self.signed()?));
            } else {
                return Ok(left);
            }
        }
    }

    fn signed(&mut self) -> Result<Term, Misspelled> {
        if self.take('−') || self.take('-') { Ok(Term::Negative(Box::new(self.signed()?))) } else { self.power() }
    }

    fn power(&mut self) -> Result<Term, Misspelled> {
        let base = self.atom()?;
        // Some read √x² as √(x²) and some as (√x)², so it must be written out.
        if matches!(base, Term::Root(..)) && matches!(self.peek(), Some('²' | '³' | '⁴' | '^')) {
            return self.fault("parentheses around a root or under it");
        }
        let exponent = match self.peek() {
            Some('²') => 2.0,
            Some('³') => 3.0,
            Some('⁴') => 4.0,
            Some('^') => {
                self.at += 1;
                match self.number()? {
                    Term::Number(value, _) => return Ok(Term::Power(Box::new(base), value)),
                    _ => return self.fault("a number"),
                }
            }
            _ => return Ok(base),
        };
        self.at += 1;
        Ok(Term::Power(Box::new(base), exponent))
    }

    fn number(&mut self) -> Result<Term, Misspelled> {
        let start = self.at;
        while self.characters.get(self.at).is_some_and(|c| c.is_ascii_digit() || *c == '.') {
            self.at += 1;
        }
        let printed: String = self.characters[start..self.at].iter().collect();
        match printed.parse() {
            Ok(value) => Ok(Term::Number(value, printed)),
            Err(_) => Err(Misspelled { at: start, expected: "a number" }),
        }
    }

    fn atom(&mut self) -> Result<Term, Misspelled> {
        match self.peek() {
            Some('(') => {
                self.at += 1;
                let inside = self.sum()?;
                if self.take(')') { Ok(Term::Group(Box::new(inside))) } else { self.fault(")") }
            }
            Some('√') => {
                self.at += 1;
                Ok(Term::Root(Box::new(self.atom()?), 2))
            }
            Some('∛') => {
                self.at += 1;
                Ok(Term::Root(Box::new(self.atom()?), 3))
            }
            Some(c) if c.is_ascii_digit() || c == '.' => self.number(),
            Some(c) if c.is_alphabetic() => self.name(),
            _ => self.fault("a number, a symbol or ("),
        }
    }

    fn name(&mut self) -> Result<Term, Misspelled> {
        let start = self.at;
        while self.characters.get(self.at).is_some_and(|c| super::is_of_a_name(*c)) {
            self.at += 1;
        }
        let name: String = self.characters[start..self.at].iter().collect();
        if name == "π" {
            return Ok(Term::Pi);
        }
        let Some((function, _)) = Function::ALL.iter().find(|(_, printed)| *printed == name) else {
            return Ok(Term::Symbol(name));
        };
        if !self.take('(') {
            return self.fault("( after a function");
        }
        let mut arguments = vec![self.sum()?];
        while self.take(',') {
            arguments.push(self.sum()?);
        }
        if arguments.len() != function.arity() {
            return self.fault("another number of arguments");
        }
        if self.take(')') { Ok(Term::Call(*function, arguments)) } else { self.fault(")") }
    }
}
