//! The pocket card, which is only printed.

use super::state::use_fitting;
use crate::app::fields::PaperPart;
use crate::app::sending::PrintedLine;
use crate::app::session::use_session;
use leptos::prelude::*;
use linkwright::present::fit::card::{CardBlock, HELP, RULES, TITLE, blocks, said_once};
use linkwright::present::words::rig_title;

/// The button, and what it prints.
#[component]
pub(super) fn PocketCard() -> impl IntoView {
    let session = use_session();
    view! {
        <div class="card-button on-screen">
            <button type="button" id="print-card" on:click=move |_| session.print_part("pocket-card")>
                "Print the pocket card"
            </button>
            <p class="help">{HELP}</p>
        </div>
        <PaperPart name="pocket-card"><Card /></PaperPart>
    }
}

/// The page. A printed card does not change any more: nothing is tracked.
#[component]
fn Card() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let system = session.units.get_untracked();
    let (name, mut blocks) = session.document.with_untracked(|document| {
        let blocks = session
            .rig
            .with_untracked(|whole| fitting.log.with_untracked(|log| blocks(document, &whole.links, log, system)));
        (rig_title(document, system), blocks)
    });
    // The notice of a received link is printed above every paper.
    let common = said_once(&mut blocks);
    let block = |block: CardBlock| {
        let [a, b] = block.ends;
        view! {
            <section>
                <h3>{block.title}</h3>
                {block.stops.into_iter().map(|words| view! { <p class="stop">{words}</p> }).collect_view()}
                <p><b>{block.lengths}</b></p>
                {(!block.turning.is_empty()).then(|| view! { <p>{block.turning}</p> })}
                <p>{a}</p>
                <p>{b}</p>
                {block.more.into_iter().map(|words| view! { <p>{words}</p> }).collect_view()}
            </section>
        }
    };
    view! {
        <article class="pocket-card">
            <p class="sheet-name">{TITLE}": "{name}</p>
            <PrintedLine />
            {common.into_iter().map(|words| view! { <p class="of-all"><b>{words}</b></p> }).collect_view()}
            <ul class="rules">{RULES.map(|rule| view! { <li>{rule}</li> }).collect_view()}</ul>
            <div class="card-links">{blocks.into_iter().map(block).collect_view()}</div>
        </article>
    }
}
