//! The as-built record: what is measured on each piece, and its certificate of work.

use super::links::code_of;
use super::machines::Machines;
use super::stops::StopLines;
use crate::app::fields::PaperPart;
use crate::app::sending::PrintedLine;
use crate::app::session::{Session, use_session};
use crate::app::shop::use_held_back;
use leptos::prelude::*;
use linkwright::document::{Holds, MOST_PIECES, Piece, PieceField};
use linkwright::engine::shop::as_built::is_held_back;
use linkwright::inputs::pieces_of;
use linkwright::present::make::record::{self, CERTIFIES, GAUGES, HELD_BACK, HELP, RecordRow, TITLE, piece_title};
use linkwright::present::words::{Units, headline, sheet_name};
use linkwright::report::Answer;

/// The section.
#[component]
pub(super) fn RecordSection(
    /// The shop's machines, for the tolerances.
    machines: Machines,
) -> impl IntoView {
    let session = use_session();
    let number = RwSignal::new(0_usize);
    let count = Memo::new(move |_| {
        session.document.with(|document| {
            let link = session.link.get();
            let made = document.links.get(link).map_or(0, |link| link.made.len());
            pieces_of(document, link).max(made).clamp(1, MOST_PIECES)
        })
    });
    let current = Memo::new(move |_| number.get().min(count.get() - 1));
    let rows =
        Memo::new(move |_| lines(session, session.link.get(), current.get(), machines, session.units.get().into()));
    let held_back = Memo::new(move |_| {
        let link = session.link.get();
        with_piece(session, link, current.get(), |piece, answer| {
            machines.machine.with(|machine| is_held_back(piece, answer, machine))
        })
        .unwrap_or_default()
    });
    let not_taken = use_held_back();
    let pick = move |piece: usize| {
        let chosen = move || (current.get() == piece).to_string();
        view! {
            <button type="button" aria-pressed=chosen on:click=move |_| number.set(piece)>
                {format!("Piece {}", piece + 1)}
            </button>
        }
    };
    // The fields stay while they are typed into; another piece or link has its own.
    let fields = move || {
        let (link, piece) = (session.link.get(), current.get());
        let fields = rows.with_untracked(|rows| rows.0.iter().map(|row| row.field).collect::<Vec<_>>());
        let field = |(at, field)| view! { <RecordField field at rows link piece /> };
        fields.into_iter().enumerate().map(field).collect_view()
    };
    view! {
        <section class="part-of" id="as-built" tabindex="-1">
            <h3>{TITLE}</h3>
            <Show when=move || { count.get() > 1 }>
                <div class="axles" role="group" aria-label="Which piece">
                    {move || (0..count.get()).map(pick).collect_view()}
                </div>
            </Show>
            <Show when=move || held_back.get()>
                <p class="stop" role="alert" id="held-back">{HELD_BACK}</p>
            </Show>
            <div class="record">{fields}</div>
            <div class="buttons">
                <button type="button" id="print-record" disabled=move || not_taken.get() on:click=move |_| session.print_part("record")>
                    "Print the certificate of work"
                </button>
            </div>
            <p class="help">{HELP}</p>
        </section>
        <PaperPart name="record">
            <Certificate machines count />
        </PaperPart>
    }
}

/// The lines of a piece, compared by what they show.
#[derive(Clone)]
struct Lines(Vec<RecordRow>);

impl PartialEq for Lines {
    fn eq(&self, other: &Self) -> bool {
        let seen = |row: &RecordRow| (row.asked.clone(), row.value.clone(), row.judged.clone());
        self.0.iter().map(seen).eq(other.0.iter().map(seen))
    }
}

/// The lines of a piece of a link.
fn lines(session: Session, link: usize, piece: usize, machines: Machines, units: Units) -> Lines {
    let rows = with_piece(session, link, piece, |piece, answer| {
        machines.machine.with(|machine| record::rows(piece, answer, machine, units))
    });
    Lines(rows.unwrap_or_default())
}

/// Reads a piece of a link, an empty one where nothing was measured, beside the answer for the current link.
fn with_piece<T>(session: Session, link: usize, piece: usize, read: impl FnOnce(&Piece, &Answer) -> T) -> Option<T> {
    let (answer, nothing) = (session.answer.get()?, Piece::default());
    session.document.with(|document| {
        let piece = document.links.get(link).and_then(|link| link.made.get(piece)).unwrap_or(&nothing);
        Some(read(piece, &answer))
    })
}

/// One field of the record.
#[component]
fn RecordField(
    /// The field.
    field: &'static PieceField,
    /// Its place among them.
    at: usize,
    /// The lines of the piece.
    rows: Memo<Lines>,
    /// Which link.
    link: usize,
    /// Which piece of it.
    piece: usize,
) -> impl IntoView {
    let session = use_session();
    let wrong = RwSignal::new(None::<String>);
    let row = move || rows.with(|rows| rows.0.get(at).cloned());
    let id = format!("in-made-{}", field.id);
    let value = move || {
        let system = session.units.get();
        session.document.with(|document| {
            let piece = document.links.get(link).and_then(|link| link.made.get(piece));
            piece.map(|piece| record::typed(field, piece, system)).unwrap_or_default()
        })
    };
    let take = move |text: String| {
        let system = session.units.get_untracked();
        let mut taken = Ok(());
        session.edit(|document| {
            if let Some(link) = document.links.get_mut(link) {
                taken = record::take(field, link.piece_mut(piece), &text, system);
                link.drop_empty_pieces();
            }
        });
        wrong.set(taken.err());
    };
    let inside = match field.holds {
        Holds::Gauge(..) => {
            let option = move |(id, label): (&'static str, &'static str)| {
                view! { <option value=id selected=move || value() == id>{label}</option> }
            };
            view! {
                <select id=id.clone() on:change:target=move |event| take(event.target().value())>
                    {GAUGES.map(option).collect_view()}
                </select>
            }
            .into_any()
        }
        _ => view! {
            <div class="entry words">
                <input
                    id=id.clone()
                    type=if matches!(field.holds, Holds::Day(..)) { "date" } else { "text" }
                    inputmode=if matches!(field.holds, Holds::Length(..)) { "decimal" } else { "text" }
                    autocomplete="off"
                    aria-invalid=move || wrong.read().is_some().to_string()
                    prop:value=value
                    on:change:target=move |event| take(event.target().value())
                />
            </div>
        }
        .into_any(),
    };
    let asked =
        move || row().map(|row| row.asked).filter(|asked| !asked.is_empty()).map(|asked| format!("Asked: {asked}"));
    let judged = move || {
        let (passes, words) = row()?.judged?;
        Some(view! { <p class=if passes { "within" } else { "error" }>{words}</p> })
    };
    view! {
        <div class="field" class:wrong=move || wrong.read().is_some()>
            <label for=id>{record::label(field)}</label>
            {inside}
            <p class="help">{asked}</p>
            {move || wrong.get().map(|words| view! { <p class="error" role="alert">{words}</p> })}
            <div role="status">{judged}</div>
        </div>
    }
}

/// What was measured on every piece of the link, on paper.
#[component]
fn Certificate(
    /// The shop's machines, for the tolerances.
    machines: Machines,
    /// How many pieces there are.
    count: Memo<usize>,
) -> impl IntoView {
    let session = use_session();
    let link = session.link.get_untracked();
    let name = session.document.with_untracked(|document| sheet_name(document, link));
    let of_link = session
        .answer
        .get_untracked()
        .map(|answer| (headline(&answer.link, Units::Both), code_of(session, link, &answer)));
    let row = |row: RecordRow| {
        let judged = row.judged.map(|(_, words)| words);
        view! {
            <tr>
                <th scope="row">{row.label}</th>
                <td>{row.asked}</td>
                <td>{row.value}</td>
                <td>{judged}</td>
            </tr>
        }
    };
    let piece = move |piece: usize| {
        let title = session.document.with_untracked(|document| piece_title(document, link, piece));
        let lines = untrack(|| lines(session, link, piece, machines, Units::Both));
        view! {
            <section class="part-of">
                <h3>{title}</h3>
                <table class="certificate">
                    <thead>
                        <tr>
                            <th scope="col">"What"</th>
                            <th scope="col">"Asked"</th>
                            <th scope="col">"Measured"</th>
                            <th scope="col">"Judged"</th>
                        </tr>
                    </thead>
                    <tbody>{lines.0.into_iter().map(row).collect_view()}</tbody>
                </table>
            </section>
        }
    };
    view! {
        <p class="sheet-name">"Certificate of work: "{name}</p>
        {of_link.map(|(made, code)| view! { <p>{made}". Link code "<b class="order-code">{code}</b></p> })}
        <PrintedLine />
        <StopLines />
        {(0..count.get_untracked()).map(piece).collect_view()}
        <p class="signed">"Signed:"</p>
        <p>{CERTIFIES}</p>
    }
}
