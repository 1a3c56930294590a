//! Every value from outside, worked out again in this very browser.

use super::slow_fold::SlowFold;
use crate::app::session::{Session, use_session};
use leptos::prelude::*;
use linkwright::present::outside::{self, HEAD, Row, Subject, ThreadRow};

/// The section, folded until it is wanted.
#[component]
pub(super) fn OutsideChecks() -> impl IntoView {
    view! {
        <section class="part-of">
            <h3>"Checked from outside"</h3>
            <p>{outside::ABOUT}</p>
            <SlowFold id="outside" title="Run every outside check in this browser">
                <Comparison />
            </SlowFold>
        </section>
    }
}

/// The values compared, subject by subject, then the tables of threads.
#[component]
fn Comparison() -> impl IntoView {
    let compared = outside::compare();
    let title = compared.threads_title();
    let explained: Vec<ThreadRow> = compared.threads.iter().filter(|row| row.is_explained()).cloned().collect();

    view! {
        <div>
            <p id="outside-sum" class="sum">{compared.count}</p>
            {compared.subjects.into_iter().map(|subject| view! { <SubjectTable subject /> }).collect_view()}
            <details id="thread-tables">
                <summary>{title}</summary>
                <p>{outside::WEAKER_COUNTS}</p>
                <ThreadTable rows=explained last="Why they differ" />
                <ThreadTable rows=compared.threads last="" />
            </details>
        </div>
    }
}

/// The values of one subject.
#[component]
fn SubjectTable(subject: Subject) -> impl IntoView {
    let row = |row: Row| {
        let agreement = row.agreement();
        view! {
            <tr class:differs=!row.agrees>
                <th scope="row">{row.name}<small>{row.source}</small></th>
                <td data-of=HEAD[1]>{row.expected}</td>
                <td data-of=HEAD[2]>{row.found}</td>
                <td data-of=HEAD[3]>{row.difference}<small>{agreement}</small></td>
            </tr>
        }
    };

    view! {
        <details>
            <summary>{subject.title}</summary>
            <div class="scroll">
                <table class="outside">
                    <thead>
                        <tr>{HEAD.map(|name| view! { <th scope="col">{name}</th> }).collect_view()}</tr>
                    </thead>
                    <tbody>{subject.rows.into_iter().map(row).collect_view()}</tbody>
                </table>
            </div>
        </details>
    }
}

/// Tabled values of threads beside the same by formula. Without a head of its own the last column says whether they
/// agree; with one, why they do not.
#[component]
fn ThreadTable(rows: Vec<ThreadRow>, last: &'static str) -> impl IntoView {
    let session = use_session();
    let says_why = !last.is_empty();
    let body = move || rows.iter().map(|row| thread_row(session, row, says_why)).collect_view();

    view! {
        <div class="scroll">
            <table class="outside">
                <thead>
                    <tr>
                        <th scope="col">"Value"</th>
                        <th scope="col">"Tabled"</th>
                        <th scope="col">"By formula"</th>
                        {if says_why {
                            view! { <th scope="col">{last}</th> }.into_any()
                        } else {
                            view! { <td></td> }.into_any()
                        }}
                    </tr>
                </thead>
                <tbody>{body}</tbody>
            </table>
        </div>
    }
}

fn thread_row(session: Session, row: &ThreadRow, says_why: bool) -> impl IntoView + use<> {
    let last = if says_why {
        view! { <td>{row.why}</td> }.into_any()
    } else {
        view! { <td>{row.agreement()}<small>{row.source.clone()}</small></td> }.into_any()
    };
    view! {
        <tr class:differs=!says_why && !row.is_accounted_for()>
            <th scope="row">{row.name.clone()}</th>
            <td>{session.show(row.tabled, row.kind)}</td>
            <td>{session.show(row.by_formula, row.kind)}</td>
            {last}
        </tr>
    }
}
