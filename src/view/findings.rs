//! The checks as sentences, worst first; each opens its working.

use super::state::Bench;
use super::{verdict, working};
use leptos::prelude::*;
use linkwright::quantity::Kind;
use linkwright::report::{Answer, Finding, Verdict};

/// Every check, worst first.
pub(super) fn findings(bench: Bench, answer: &Answer) -> AnyView {
    let mut findings: Vec<&Finding> = answer.findings.iter().collect();
    let weight = |finding: &Finding| match finding.verdict {
        Verdict::Fails => 3,
        Verdict::Close => 2,
        Verdict::Holds => 1,
        Verdict::Unanswered => 0,
    };
    findings.sort_by(|a, b| {
        let used = |finding: &Finding| finding.utilization.unwrap_or(0.0);
        weight(b).cmp(&weight(a)).then(used(b).total_cmp(&used(a)))
    });
    view! {
        <h3>"Every check, worst first"</h3>
        <p class="note">"Open one to see its formula, the values put in and where it comes from."</p>
        <div class="findings">{findings.into_iter().map(|finding| one(bench, answer, finding)).collect_view()}</div>
    }
    .into_any()
}

fn one(bench: Bench, answer: &Answer, finding: &Finding) -> AnyView {
    let id = finding.id;
    let used = finding.utilization.map(|used| bench.show(used, Kind::Percent)).unwrap_or_default();
    let rule = finding.rule.then_some("Rule of thumb or fit. ");
    let kept = finding.clone();
    let loads = answer.loads.working.clone();
    let toggle = move |_| {
        bench.opened.update(|opened| {
            if opened.contains(&id) {
                opened.retain(|other| *other != id);
            } else {
                opened.push(id);
            }
        });
    };
    let is_open = Memo::new(move |_| bench.printing.get() || bench.opened.with(|opened| opened.contains(&id)));
    view! {
        <section class=format!("finding {}", verdict::class(finding.verdict)) data-check=id>
            <button type="button" aria-expanded=move || is_open.get().to_string() on:click=toggle>
                {verdict::mark(finding.verdict)}
                <span class="asks">{finding.asks}</span>
                <span class="used">{used}</span>
            </button>
            <p>{rule}{bench.say(&finding.says)}</p>
            {move || is_open.get().then(|| working::working(bench, &kept, &loads))}
        </section>
    }
    .into_any()
}
