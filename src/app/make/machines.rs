//! What the shop has set of its machines and its saw, kept on this device, and the fields for it.

use crate::app::session::{Session, use_session};
use crate::browser::storage;
use leptos::prelude::*;
use linkwright::engine::shop::route::Machine;
use linkwright::engine::shop::route::machine::{self, Setting};
use linkwright::present::make::machine::{SettingField, field, not_kept, take};
use linkwright::present::saved::notices::refused;
use linkwright::store::Write;
use linkwright::store::shop_lists::{MACHINE, key};

/// The settings while the view is open.
#[derive(Clone, Copy)]
pub(super) struct Machines {
    session: Session,
    /// The settings.
    pub(super) machine: RwSignal<Machine>,
    /// Why they are not kept, if they are not.
    trouble: RwSignal<Option<String>>,
}

impl Machines {
    /// Reads the settings, and follows what other tabs write.
    pub(super) fn open(session: Session) -> Self {
        let machines = Self { session, machine: RwSignal::new(Machine::default()), trouble: RwSignal::new(None) };
        Effect::new(move |_| {
            session.shop_changed.track();
            let kept = machine::read(&storage::get(&key(MACHINE)).unwrap_or_default());
            if machines.machine.with_untracked(|now| *now != kept) {
                machines.machine.set(kept);
            }
        });
        machines
    }

    /// Changes settings and keeps them.
    pub(super) fn change<T>(self, change: impl FnOnce(&mut Machine) -> T) -> Option<T> {
        let done = self.machine.try_update(change)?;
        let text = self.machine.with_untracked(machine::write);
        let kept = self.session.carry_out(&[Write { key: key(MACHINE), text }]);
        self.trouble.set(kept.err().map(|why| not_kept(refused(why))));
        Some(done)
    }
}

/// Why the settings are not kept; nothing while they are.
#[component]
pub(super) fn NotKept(
    /// The settings.
    machines: Machines,
) -> impl IntoView {
    move || machines.trouble.get().map(|words| view! { <p class="error" role="alert">{words}</p> })
}

/// The field of one setting.
#[component]
pub(super) fn SettingEntry(
    /// The settings.
    machines: Machines,
    /// Which one.
    setting: &'static Setting,
) -> impl IntoView {
    let session = use_session();
    let wrong = RwSignal::new(None::<String>);
    let shown: Memo<SettingField> =
        Memo::new(move |_| machines.machine.with(|machine| field(machine, setting, session.units.get())));
    let typed = move |text: String| {
        let system = session.units.get_untracked();
        let taken = machines.change(|machine| take(machine, setting, &text, system));
        wrong.set(taken.and_then(Result::err));
    };
    let (id, help) = (format!("in-{}", setting.id), format!("help-{}", setting.id));
    view! {
        <div
            class="field"
            class:changed=move || shown.with(|shown| !shown.text.is_empty())
            class:wrong=move || wrong.read().is_some()
        >
            <label for=id.clone()>{setting.label}</label>
            <div class="entry">
                <input
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    spellcheck="false"
                    enterkeyhint="done"
                    id=id
                    prop:value=move || shown.with(|shown| shown.text.clone())
                    placeholder=move || shown.with(|shown| shown.placeholder.clone())
                    aria-invalid=move || wrong.read().is_some().to_string()
                    aria-describedby=help.clone()
                    on:change:target=move |event| typed(event.target().value())
                />
                <span class="unit" aria-hidden="true">{move || shown.with(|shown| shown.unit)}</span>
            </div>
            {move || wrong.get().map(|words| view! { <p class="error" role="alert">{words}</p> })}
            <p class="help" id=help>{move || shown.with(|shown| shown.help.clone())}</p>
        </div>
    }
}
