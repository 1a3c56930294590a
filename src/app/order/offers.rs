//! What the link can be made from out of the shop's own lists, and what would have to be ordered.

use crate::app::session::{Question, after_paint, use_session};
use crate::app::shop::{Shop, use_machine};
use leptos::prelude::*;
use linkwright::engine::shop::cut_plan::Saw;
use linkwright::engine::shop::route::Machine;
use linkwright::engine::shop::stock::{self, Offers as Found};
use linkwright::present::order::lists::{OFFERS_HELP, OfferRow, SEARCHING, as_it_stands, offers, remark, saw_used};
use linkwright::shop::Lists;

/// What a search found, and what it was asked of: document, link, lists and saw.
struct Searched {
    of: (Question, Lists, Saw),
    found: Found,
}

/// The section; nothing while the shop has no lists.
#[component]
pub(super) fn Offers(
    /// The shop's lists.
    shop: Shop,
) -> impl IntoView {
    let session = use_session();
    let has_lists = Memo::new(move |_| shop.lists.with(Lists::has_stock));
    // A search takes as long as many answers, so it is asked for by hand; it is gone once anything changes.
    let searched = RwSignal::new(None::<Searched>);
    let searching = RwSignal::new(false);
    let machine = use_machine(session);
    let saw = Memo::new(move |_| machine.with(Machine::saw));
    let standing = Memo::new(move |_| {
        let (link, system) = (session.link.get(), session.units.get());
        session.answer.get().map(|answer| {
            let needed = session
                .document
                .with(|document| shop.lists.with(|lists| stock::standing(document, link, &answer, lists, &saw.get())));
            as_it_stands(&needed, system)
        })
    });
    let search = move |_| {
        session.settle();
        if searching.get_untracked() {
            return;
        }
        searching.set(true);
        after_paint(move || {
            // Nobody waits for it any more once the view is left.
            if searching.is_disposed() {
                return;
            }
            let of = (session.question.get_untracked(), shop.lists.get_untracked(), saw.get_untracked());
            let ((document, link), lists, saw) = &of;
            let found = stock::offers(document, *link, lists, saw);
            searched.set(Some(Searched { of, found }));
            searching.set(false);
        });
    };
    let current = Memo::new(move |_| {
        searched.with(|searched| {
            searched.as_ref().is_some_and(|Searched { of: (question, lists, sawn), .. }| {
                session.question.with(|now| now == question)
                    && shop.lists.with(|now| now == lists)
                    && saw.with(|now| now == sawn)
            })
        })
    });
    let take = move |index: usize| {
        let link = session.link.get_untracked();
        let offer = searched.with_untracked(|searched| searched.as_ref()?.found.offers.get(index).cloned());
        if let Some(offer) = offer.filter(|_| current.get_untracked()) {
            session.rearrange(|document| *document = stock::take(document, link, &offer));
        }
    };
    let row = move |(index, row): (usize, OfferRow)| {
        view! {
            <li>
                <h4>{row.name}</h4>
                <p>{row.says}</p>
                <button type="button" class="take-offer" on:click=move |_| take(index)>"Take these"</button>
            </li>
        }
    };
    let rows = move || {
        if searching.get() {
            return view! { <p>{SEARCHING}</p> }.into_any();
        }
        let system = session.units.get();
        let shown = searched.with(|searched| {
            let Searched { found, .. } = searched.as_ref().filter(|_| current.get())?;
            Some(view! {
                <ol class="offers">{offers(found, system).into_iter().enumerate().map(row).collect_view()}</ol>
                {remark(found).map(|remark| view! { <p>{remark}</p> })}
            })
        });
        shown.into_any()
    };
    view! {
        <Show when=move || has_lists.get()>
            <section class="part-of" id="from-stock" tabindex="-1">
                <h3>"From your own stock"</h3>
                <p>{move || standing.get()}</p>
                <div class="buttons">
                    <button type="button" id="search-stock" on:click=search>"Find what passes from stock"</button>
                </div>
                <div role="status">{rows}</div>
                <p class="help" id="saw-used">{move || machine.with(|machine| saw_used(machine, session.units.get()))}</p>
                <p class="help">{OFFERS_HELP}</p>
            </section>
        </Show>
    }
}
