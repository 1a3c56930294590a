//! Every check, worst first, each opening its working.

use super::state::Bench;
use super::{verdict, working};
use leptos::prelude::*;
use linkwright::quantity::Kind;
use linkwright::report::{Answer, Finding, Verdict};

/// The list of checks, and where the loads come from.
pub(super) fn findings(bench: Bench, answer: &Answer) -> AnyView {
    let mut sorted: Vec<Finding> = answer.findings.clone();
    let used = |finding: &Finding| finding.utilization.unwrap_or(0.0);
    sorted.sort_by(|a, b| rank(b.verdict).cmp(&rank(a.verdict)).then(used(b).total_cmp(&used(a))));
    let loads = answer.loads.working.clone();
    view! {
        <section class="part-of">
            <h3>"Every check, worst first"</h3>
            <p>"Tap a check to see how it was worked out. 100 % is the limit, with your factors already in it."</p>
            <div class="checks">
                {sorted.into_iter().map(|finding| check(bench, finding)).collect_view()}
                {opening(bench, "loads", view! {
                    <span class="ask"><b>"Where the forces come from"</b><span>"Traction along the link and the strike across it."</span></span>
                }.into_any(), move || working::lines(bench, &loads))}
            </div>
        </section>
    }
    .into_any()
}

/// Worst first; what cannot be told comes last, since nobody can act on it.
const fn rank(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::Fails => 3,
        Verdict::Close => 2,
        Verdict::Holds => 1,
        Verdict::Unanswered => 0,
    }
}

fn check(bench: Bench, finding: Finding) -> AnyView {
    let used = finding.utilization.map(|used| view! { <span class="used">{bench.show(used, Kind::Percent)}</span> });
    let head = view! {
        {verdict::mark(finding.verdict)}
        {used}
        <span class="ask"><b>{finding.asks}</b><span>{bench.say(&finding.says)}{finding.rule.then_some(" A rule of thumb or a matter of fit.")}</span></span>
    };
    let id = finding.id;
    opening(bench, id, head.into_any(), move || {
        view! {
            {working::lines(bench, &finding.working)}
            <p class="source">"Rests on "{finding.source.words()}". "{finding.source.source.title}"."</p>
        }
        .into_any()
    })
}

/// A line that opens; what is inside is only built once somebody looks, or when it is printed.
fn opening(bench: Bench, id: &'static str, head: AnyView, inside: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let open = move || bench.laid_open.get() || bench.opened.with(|opened| opened.contains(&id));
    let toggle = move |event: leptos::ev::MouseEvent| {
        event.prevent_default();
        bench.opened.update(|opened| {
            if opened.contains(&id) {
                opened.retain(|other| *other != id);
            } else {
                opened.push(id);
            }
        });
    };
    view! {
        <details class="check" data-check=id prop:open=open>
            <summary on:click=toggle>{head}</summary>
            <div class="working">{move || if open() { inside() } else { ().into_any() }}</div>
        </details>
    }
    .into_any()
}
