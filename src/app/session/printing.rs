//! Printing: opens folds and shows both drawings for the paper, then puts the page back as it was.

use super::Session;
use crate::browser::{page, window};
use leptos::prelude::*;
use linkwright::present::drawing::Layout;
use std::time::Duration;

/// Long enough for the page to be rendered for printing.
const READY: Duration = Duration::from_millis(50);

/// A page inside another program may have no printer and gets no events; then printing is over after this.
const NO_PRINTER: Duration = Duration::from_secs(1);

impl Session {
    /// How drawings are laid out: for a wide screen and for paper, or for a phone.
    pub(crate) fn layout(self) -> Layout {
        if self.wide.get() || self.printing.get() { Layout::Wide } else { Layout::Narrow }
    }

    /// Whether a drawing in this layout is wanted: the screen shows it, or paper may want it.
    pub(crate) fn shows(self, layout: Layout) -> bool {
        self.printing.get() || self.wide.get() == (layout == Layout::Wide)
    }

    /// Follows the browser's own print command.
    pub(super) fn watch_printing(self) {
        window::on("beforeprint", move |_| {
            self.settle();
            self.printing.set(true);
            self.printer.update_value(|(_, at_it)| *at_it = true);
        });
        window::on("afterprint", move |_| self.printed());
    }

    /// Prints; with every working or every link's sheet if `everything` is wanted, since nothing can be opened on paper.
    pub(crate) fn print(self, everything: bool) {
        self.laid_open.set(everything);
        self.send_to_printer();
    }

    /// Prints one part of a view by itself: see `PaperPart`.
    pub(crate) fn print_part(self, part: &'static str) {
        self.paper_part.set(Some(part));
        self.send_to_printer();
    }

    fn send_to_printer(self) {
        self.settle();
        // Events that arrive while the print dialog is open take effect only once it has closed.
        self.printing.set(true);
        self.printer.update_value(|(asked, _)| *asked += 1);
        let (asked, _) = self.printer.get_value();
        let ask = move || {
            page::print();
            let no_printer = move || {
                if self.printer.get_value() == (asked, false) {
                    self.printed();
                }
            };
            set_timeout(no_printer, NO_PRINTER);
        };
        set_timeout(ask, READY);
    }

    fn printed(self) {
        self.printer.update_value(|(_, at_it)| *at_it = false);
        self.printing.set(false);
        self.laid_open.set(false);
        self.paper_part.set(None);
    }
}
