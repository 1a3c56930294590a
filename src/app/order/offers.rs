//! What the link can be made from out of the shop's own lists, and what would have to be ordered.

use crate::app::session::use_session;
use crate::app::shop::Shop;
use leptos::prelude::*;
use linkwright::engine::shop::cut_plan::Saw;
use linkwright::engine::shop::stock::{self, Offers as Found};
use linkwright::present::order::lists::{offers, remark, stock as in_stock};
use linkwright::shop::Lists;

/// The section; nothing while the shop has no lists.
#[component]
pub(super) fn Offers(
    /// The shop's lists.
    shop: Shop,
) -> impl IntoView {
    let session = use_session();
    let has_lists = Memo::new(move |_| shop.lists.with(Lists::has_stock));
    // A search takes as long as many answers, so it is asked for by hand; it is gone once anything changes.
    let found = RwSignal::new(None::<Found>);
    let of = RwSignal::new(None);
    let standing = Memo::new(move |_| {
        let (link, system) = (session.link.get(), session.units.get());
        session.answer.get().map(|answer| {
            let needed = session.document.with(|document| {
                shop.lists.with(|lists| stock::standing(document, link, &answer, lists, &Saw::ASSUMED))
            });
            in_stock(&needed, system)
        })
    });
    let search = move |_| {
        session.settle();
        let (document, link) = (session.document.get_untracked(), session.link.get_untracked());
        found.set(Some(shop.lists.with_untracked(|lists| stock::offers(&document, link, lists, &Saw::ASSUMED))));
        of.set(Some((document, link)));
    };
    let current = move || {
        of.with(|of| {
            of.as_ref().is_some_and(|(document, link)| {
                *link == session.link.get() && session.document.with(|now| now == document)
            })
        })
    };
    let take = move |index: usize| {
        let link = session.link.get_untracked();
        let offer = found.with_untracked(|found| found.as_ref().and_then(|found| found.offers.get(index).cloned()));
        if let Some(offer) = offer {
            session.rearrange(|document| *document = stock::take(document, link, &offer));
        }
    };
    let rows =
        move || {
            let system = session.units.get();
            found.with(|found| {
                found.as_ref().filter(|_| current()).map(|found| {
            let row = |(index, row): (usize, linkwright::present::order::lists::OfferRow)| view! {
                <li>
                    <h4>{row.name}</h4>
                    <p>{row.verdict}". "{row.lengths}". "{row.stock}</p>
                    <button type="button" class="take-offer" on:click=move |_| take(index)>"Take these"</button>
                </li>
            };
            view! {
                <ol class="offers">{offers(found, system).into_iter().enumerate().map(row).collect_view()}</ol>
                {remark(found).map(|remark| view! { <p>{remark}</p> })}
            }
        })
            })
        };
    view! {
        <Show when=move || has_lists.get()>
            <section class="part-of" id="from-stock" tabindex="-1">
                <h3>"From your own stock"</h3>
                <p>"As it stands. "{move || standing.get()}</p>
                <div class="buttons">
                    <button type="button" id="search-stock" on:click=search>"Find what passes from stock"</button>
                </div>
                <div role="status">{rows}</div>
                <p class="help">"Taking one writes its measured sizes into the entries, so the link opens to the same numbers anywhere."</p>
            </section>
        </Show>
    }
}
