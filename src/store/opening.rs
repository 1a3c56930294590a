//! What the page opens with: what the address brings, or what was kept.
//!
//! ```text
//!   the address brings nothing, or nothing that can be read ──▶ what was kept (a bad link is told)
//!   it brings what was kept ─────────────────────────────────▶ what was kept, with its origin
//!   it brings something else: a link ────────────────────────▶ the link; what was kept is set aside and offered
//!   it is what this tab wrote itself, so the page was loaded anew:
//!        another tab went on with something else, or there
//!        was no room ────────────────────────────────────────▶ this tab's own
//!        another tab went on with the same ──────────────────▶ what was kept; this tab's own is set aside
//! ```
//!
//! Serves the promises on reloads, bad links and two tabs.

use super::saved_builds::SavedBuild;
use super::stored_entries::{Origin, StoredEntries, is_of_address};
use super::{other_tabs, saved_builds, unverified};
use crate::document::Document;
use crate::share::{self, Opened, Sent};

/// What a page finds when it is loaded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Found<'a> {
    /// The fragment of the address.
    pub address: &'a str,
    /// The fragment that this tab wrote into its address last.
    pub own_address: &'a str,
    /// The entries that this tab kept last.
    pub of_tab: &'a str,
    /// The entries that all tabs share.
    pub shared: &'a str,
}

/// What to open.
#[derive(Debug, Clone, PartialEq)]
pub enum Open {
    /// Entries that the browser kept for all tabs.
    Stored(StoredEntries),
    /// This tab's own: another tab's stand where all tabs find them, or there was no room for these. They are to be
    /// kept at once where nothing else holds them.
    OfTab(StoredEntries),
    /// A link, in the place of these entries.
    Link(Opened, StoredEntries),
}

/// How a page begins.
#[derive(Debug, Clone, PartialEq)]
pub struct Opening {
    /// What to open.
    pub open: Open,
    /// Entries that give way to it, and must be set aside first.
    pub set_aside: Option<StoredEntries>,
    /// What the reader should know, a sentence each.
    pub notices: Vec<String>,
    /// Whether the address is none that this tab wrote, also if it is left before it writes the new one.
    pub address_is_foreign: bool,
}

impl Opening {
    const fn of(open: Open) -> Self {
        Self { open, set_aside: None, notices: Vec::new(), address_is_foreign: false }
    }
}

/// Said once where a link brought what no link of ours carries.
const NOT_OURS: &str = "This link claims how far an order is, or what was measured. No link carries that, so it was left out: ask the sender.";

/// Said once where a link brought a log that was taken in.
const LOG_TAKEN: &str = "This link brought the log of whoever sent it: readings, dates and notes stand in Fit. They are theirs, so look at the link yourself before you trust them.";

/// Said once where a link brought a log beside entries that have their own.
const LOG_LEFT_OUT: &str = "This link carries a log, too. It was left out, because these entries are open here with a log of their own. Ask for the build as a file: importing that joins both logs.";

/// The log that a link brought, as a text: taken in where its entries are new here, else left out. With what the reader
/// should know of it.
pub fn brought_log<'a>(opened: &'a Opened, received: &Received) -> (&'a str, Option<&'static str>) {
    if opened.log.is_empty() {
        ("", None)
    } else if received.is_new && received.entries.origin.build.is_none() {
        (&opened.log, Some(LOG_TAKEN))
    } else {
        ("", Some(LOG_LEFT_OUT))
    }
}

/// The sentences on an address whose entries are open here already.
fn of_same(opened: Opened) -> Vec<String> {
    let log = (!opened.log.is_empty()).then(|| LOG_LEFT_OUT.to_string());
    opened.notices.into_iter().chain(log).collect()
}

/// What an address brings. Stages, a yes and measured pieces are taken from no link: anybody can write one.
fn brought(address: &str) -> Opened {
    let mut opened = share::from_fragment(address);
    let sent = share::sent(&opened.document, Sent { reference: true, remarks: true });
    if sent != opened.document {
        opened.document = sent;
        opened.notices.push(NOT_OURS.to_string());
    }
    opened
}

/// Decides what a page opens with.
pub fn on_load(found: Found<'_>) -> Opening {
    let opened = brought(found.address);
    let shared = StoredEntries::read(found.shared);
    if found.address.is_empty() || opened.document == Document::default() {
        // A link that brings nothing leaves the entries alone.
        let notices = if found.address.is_empty() { Vec::new() } else { opened.notices };
        return Opening { notices, ..Opening::of(Open::Stored(shared)) };
    }
    let plain = share::to_fragment(&opened.document);
    let of_tab = StoredEntries::read(found.of_tab);
    let reloaded = !of_tab.fragment.is_empty() && (of_tab.is_of_address(&plain) || found.own_address == found.address);
    if reloaded && !of_tab.origin.is_same(&shared.origin) {
        // Another tab works on something else meanwhile.
        return Opening::of(Open::OfTab(of_tab));
    }
    if reloaded {
        // This tab may have slept or gone back while another one went on.
        let set_aside = Some(of_tab).filter(|of_tab| of_tab.fragment != shared.fragment);
        return Opening { set_aside, ..Opening::of(Open::Stored(shared)) };
    }
    if shared.is_of_address(&plain) {
        let notices = if shared.origin.unverified.is_empty() { of_same(opened) } else { Vec::new() };
        return Opening { notices, address_is_foreign: true, ..Opening::of(Open::Stored(shared)) };
    }
    Opening { address_is_foreign: true, ..Opening::of(Open::Link(opened, shared)) }
}

/// What an address means that changed while the page is open.
#[derive(Debug, Clone, PartialEq)]
pub enum AddressChange {
    /// Nothing came: what is open stays, and the address says so again.
    Nothing(Vec<String>),
    /// What is open already.
    Same(Vec<String>),
    /// A link to open.
    Link(Opened),
}

/// Decides what an address means that was changed by a link, by the reader, by a way back.
pub fn on_address(address: &str, own: &StoredEntries) -> AddressChange {
    let opened = brought(address);
    if opened.document == Document::default() {
        AddressChange::Nothing(if address.is_empty() { Vec::new() } else { opened.notices })
    } else if own.is_of_address(&share::to_fragment(&opened.document)) {
        AddressChange::Same(of_same(opened))
    } else {
        AddressChange::Link(opened)
    }
}

/// The entries of a link: those offered back where it brings just these, else new ones as received.
pub fn receive(
    opened: &Opened,
    before: Option<&StoredEntries>,
    shared: &str,
    builds: &[SavedBuild],
    id: String,
) -> Received {
    let plain = share::to_fragment(&opened.document);
    if let Some(before) = before.filter(|before| before.is_of_address(&plain)) {
        return Received { entries: other_tabs::newest(before.clone(), shared), is_new: false };
    }
    // A bookmark of a build that is kept here brings the order that is kept with it.
    let with_order =
        |saved: &&SavedBuild| saved.is_open() && saved.fragment != plain && is_of_address(&saved.fragment, &plain);
    if let Some(saved) = builds.iter().find(with_order).filter(|_| opened.notices.is_empty()) {
        let (_, origin) = saved_builds::open(saved, None, id);
        return Received { entries: StoredEntries { fragment: saved.fragment.clone(), origin }, is_new: true };
    }
    let mut origin = Origin { base: plain.clone(), unverified: opened.notices.clone(), ..Origin::new(id) };
    // The address of unverified numbers says nothing of it; what holds them here may.
    let same = builds.iter().filter(|saved| !saved.damaged && saved.fragment == plain);
    same.flat_map(|saved| &saved.build.unverified)
        .for_each(|sentence| unverified::add(&mut origin.unverified, sentence));
    Received { entries: StoredEntries { fragment: plain, origin }, is_new: true }
}

/// What a link brings.
#[derive(Debug, Clone, PartialEq)]
pub struct Received {
    /// The entries to open.
    pub entries: StoredEntries,
    /// Whether they are not the reader's own earlier ones.
    pub is_new: bool,
}
