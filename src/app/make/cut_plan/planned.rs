//! The plan that was made, what it was made of, and whether that still stands.

use crate::app::make::machines::Machines;
use crate::app::session::Session;
use crate::app::shop::Shop;
use leptos::prelude::*;
use linkwright::document::Document;
use linkwright::engine;
use linkwright::engine::shop::cut_plan::from_lists::{Taken, cut, kind, rack};
use linkwright::engine::shop::cut_plan::{CutPlan, Demand, Source, cut_plan, demands};
use linkwright::engine::shop::route::Machine;
use linkwright::engine::shop::route::machine::STOCK_LENGTH;
use linkwright::present::make::cut_plan::open;
use linkwright::present::saved::title_of;
use linkwright::report::LinkReport;
use linkwright::shop::{Kind, Lists};

/// What a plan is made of.
#[derive(Clone)]
struct Question {
    /// The rig that is open without its order, if it is cut.
    rig: Option<Document>,
    /// The ids of the saved builds that are cut.
    builds: Vec<String>,
    lists: Lists,
    machine: Machine,
}

/// A plan.
#[derive(Clone)]
pub(crate) struct Found {
    of: Question,
    /// The plan of each metal and size, and whether the length of its bars was assumed.
    pub(crate) plans: Vec<(CutPlan, bool)>,
    /// What is said of entries that it leaves out.
    pub(crate) open: Option<String>,
    /// What was taken off the lists and put into them, once that was done.
    pub(crate) taken: Option<Taken>,
}

/// The plan while the view is open.
#[derive(Clone, Copy)]
pub(crate) struct Planned {
    /// What was found.
    pub(crate) found: RwSignal<Option<Found>>,
    /// Whether the rig that is open is cut.
    pub(crate) with_rig: RwSignal<bool>,
    /// The ids of the saved builds that are cut with it.
    pub(crate) builds: RwSignal<Vec<String>>,
}

impl Planned {
    pub(crate) fn new() -> Self {
        Self { found: RwSignal::new(None), with_rig: RwSignal::new(true), builds: RwSignal::new(Vec::new()) }
    }

    /// What a plan is made of now. Nothing is tracked.
    fn question(self, session: Session, shop: Shop, machines: Machines) -> Question {
        Question {
            rig: self.with_rig.get_untracked().then(|| session.question.get_untracked().0),
            builds: self.builds.get_untracked(),
            lists: shop.lists.get_untracked(),
            machine: machines.machine.get_untracked(),
        }
    }

    /// Makes the plan. It takes as long as many answers, so it is asked for by hand.
    pub(crate) fn plan(self, session: Session, shop: Shop, machines: Machines) {
        session.settle();
        let of = self.question(session, shop, machines);
        let whole = session.rig.get_untracked();
        let system = session.units.get_untracked();
        let builds: Vec<(String, Document, Vec<LinkReport>)> = session.with_builds(|saved| {
            let ticked = of.builds.iter().filter_map(|id| saved.iter().find(|saved| saved.build.id == *id));
            let one = ticked.map(|saved| {
                let document = saved.build.document.clone();
                let reports = engine::whole_rig(&document, None).links;
                (title_of(saved, system), document, reports)
            });
            one.collect()
        });
        let name = if builds.is_empty() { "" } else { "What is open now" };
        let own = of.rig.as_ref().map(|document| Source { build: name, document, reports: &whole.links });
        let others = builds.iter().map(|(build, document, reports)| Source { build, document, reports });
        let all = demands(&own.into_iter().chain(others).collect::<Vec<_>>());
        let saw = of.machine.saw();
        let one = |demand: &Demand| {
            let rack = rack(demand, &of.lists, of.machine.in_force(&STOCK_LENGTH));
            (cut_plan(demand, &rack.stock, &saw), rack.assumed)
        };
        let plans = all.of.iter().map(one).collect();
        self.found.set(Some(Found { plans, open: open(&all), taken: None, of }));
    }

    /// Whether nothing has changed since.
    pub(crate) fn is_current(self, session: Session, shop: Shop, machines: Machines) -> bool {
        // Nothing is compared at every key while nothing is planned.
        self.found.with(|found| {
            found.as_ref().is_some_and(|Found { of, .. }| {
                let same_rig = match (&of.rig, self.with_rig.get()) {
                    (Some(of), true) => session.question.with(|(now, _)| now == of),
                    (None, false) => true,
                    _ => false,
                };
                same_rig
                    && self.builds.with(|now| *now == of.builds)
                    && shop.lists.with(|now| *now == of.lists)
                    && machines.machine.with(|now| *now == of.machine)
            })
        })
    }

    /// Whether nothing is cut.
    pub(crate) fn is_empty(self) -> bool {
        self.found.with(|found| found.as_ref().is_none_or(|found| found.plans.is_empty()))
    }

    /// Takes the bars off the shop's lists and puts the pieces that are kept into them, once.
    pub(crate) fn put_remnants(self, shop: Shop) {
        let Some(mut found) = self.found.get_untracked().filter(|found| found.taken.is_none()) else { return };
        // Rows are found by their place: what another tab wrote this moment makes it another plan's.
        if Kind::ALL.into_iter().any(|kind| shop.catch_up(kind)) {
            return;
        }
        let mut sum = Taken::default();
        for (plan, _) in &found.plans {
            if let Some(taken) = shop.edit(kind(plan.wall), |lists| cut(plan, lists)) {
                sum.used += taken.used;
                sum.kept += taken.kept;
            }
        }
        found.taken = Some(sum);
        // The plan stands as it was made, though the lists are no longer those it was made of.
        found.of.lists = shop.lists.get_untracked();
        self.found.set(Some(found));
    }
}
