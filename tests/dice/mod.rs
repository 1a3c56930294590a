//! Random rigs that are the same on every machine.
#![allow(dead_code, reason = "not every test throws for whole rigs")]

use linkwright::document::{
    Document, Happened, History, Holds, Link, Order, PIECE_FIELDS, Piece, Stage, Step, Yes, tidy_name, tidy_reference,
    tidy_remarks,
};
use linkwright::inputs::{CHOICES, NUMBERS, places};
use linkwright::quantity::inch;

/// Numbers that look like chance and are the same on every machine.
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    /// A number below another.
    pub(crate) fn next(&mut self, below: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % below
    }

    fn share(&mut self) -> f64 {
        self.next(1 << 30) as f64 / f64::from((1 << 30) - 1)
    }

    /// A rig of a few links with some of everything decided, in any digits.
    pub(crate) fn rig(&mut self) -> Document {
        let most = if self.next(50) == 0 { 40 } else { 9 };
        let links = 1 + self.next(most);
        let mut document = Document { links: vec![Link::default(); links], ..Document::default() };
        let letters = ['a', 'Z', '0', '-', ' ', '.', '_', '&', '=', '#', '%', '"', '\'', '<', 'é', '½', '日', '😀'];
        let name: String = (0..self.next(8)).map(|_| letters[self.next(letters.len())]).collect();
        document.name = tidy_name(&name);
        for _ in 0..self.next(14) {
            let input = NUMBERS[self.next(NUMBERS.len())];
            let places = places(&document, input.scope);
            let value = input.whole(input.least + self.share() * (input.most - input.least));
            // Half of them as somebody would type them.
            let typed = inch((value / inch(1.0) * 32.0).round() / 32.0);
            let value = if self.next(2) == 0 && input.accepts(typed) { typed } else { value };
            (input.set)(&mut document, places[self.next(places.len())], Some(value));
        }
        for _ in 0..self.next(8) {
            let choice = CHOICES[self.next(CHOICES.len())];
            let places = places(&document, choice.scope);
            let options = (choice.options)();
            (choice.set)(&mut document, places[self.next(places.len())], Some(options[self.next(options.len())].id));
        }
        document
    }

    /// A piece of which some things were written down.
    pub(crate) fn piece(&mut self) -> Piece {
        let mut piece = Piece::default();
        for field in &PIECE_FIELDS {
            match (self.next(3), &field.holds) {
                (0, _) => {}
                (_, Holds::Length(..)) => {
                    field.set_length(&mut piece, inch(1.0) + self.next(90_000) as f64 * 1e-5);
                }
                (_, Holds::Words(..)) => {
                    field.set_text(&mut piece, ["H 4711", "é & ½", "x=1"][self.next(3)]);
                }
                (_, Holds::Day(..)) => {
                    field.set_text(&mut piece, "2026-12-24");
                }
                (_, Holds::Gauge(..)) => {
                    field.set_text(&mut piece, ["passed", "refused"][self.next(2)]);
                }
            }
        }
        piece
    }

    /// An order with some of everything said, in any letters.
    pub(crate) fn order(&mut self) -> Order {
        let letters =
            ['a', 'Z', '0', '-', ' ', '.', '_', '&', '=', '#', '%', '"', '\'', '<', 'é', '½', '日', '😀', '\n'];
        let text = |dice: &mut Self, longest: usize| {
            let most = if dice.next(20) == 0 { longest * 2 } else { 12 };
            (0..dice.next(most)).map(|_| letters[dice.next(letters.len())]).collect::<String>()
        };
        let wanted = ["", "2026-12-24", "2028-02-29"][self.next(3)].to_string();
        let snapshot = |dice: &mut Self| match dice.next(3) {
            0 => String::new(),
            _ => linkwright::share::snapshot(&dice.rig()),
        };
        let yes = Yes {
            by: tidy_reference(&text(self, 60)),
            at: ["", "2026-11-25T07:41:00.000Z"][self.next(2)].to_string(),
            code: ["", "K7QM-2XPA-B"][self.next(2)].to_string(),
            snapshot: snapshot(self),
        };
        let mut order = Order {
            reference: tidy_reference(&text(self, 60)),
            remarks: tidy_remarks(&text(self, 400)),
            wanted,
            stage: Stage::ALL[self.next(4)],
            read_back: ["", "K7QM-2XPA-R"][self.next(2)].to_string(),
            first_said: snapshot(self),
            yes,
            history: History::default(),
        };
        for _ in 0..self.next(6) {
            let what = [0, 1, 2, 3, 4]
                .map(|at| Stage::ALL.get(at).map_or(Happened::YesTakenBack, |it| Happened::Reached(*it)));
            let at = ["", "2026-11-25T07:41:00.000Z"][self.next(2)].to_string();
            let code = ["", "K7QM-2XPA-B"][self.next(2)].to_string();
            order.history.add(&Step { what: what[self.next(5)], by: text(self, 60), at, code });
        }
        order
    }
}

/// The same with dice of its own on each of four threads.
pub(crate) fn in_four_threads(seed: u64, play: impl Fn(Dice) + Sync) {
    std::thread::scope(|scope| {
        for number in 0..4 {
            let play = &play;
            scope.spawn(move || play(Dice(seed + number)));
        }
    });
}
