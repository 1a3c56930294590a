//! The button that puts something into the log, and beside it whether the log has it.

use super::state::{Draft, use_fitting};
use crate::app::fields::say_again;
use crate::app::session::use_session;
use crate::browser::{clock, files};
use leptos::prelude::*;
use linkwright::builds;
use linkwright::present::fit::log::{EXPORT, FILE_NOT_WRITTEN, already_in, exported, in_log, not_kept};
use linkwright::present::fit::safe::INTO_LOG;
use linkwright::present::saved::file_name;
use linkwright::present::words::rig_title;
use linkwright::store::Refused;

/// The button with its status.
#[component]
pub(super) fn IntoLog(
    /// Its id.
    id: &'static str,
    /// What stands on it.
    #[prop(default = INTO_LOG)]
    label: &'static str,
    /// What it puts in; none while there is nothing to put in.
    #[prop(into)]
    draft: Signal<Option<Draft>>,
    /// What is said while there is nothing.
    #[prop(default = "")]
    nothing: &'static str,
    /// What happens once it is in.
    #[prop(optional, into)]
    on_done: Option<Callback<()>>,
) -> impl IntoView {
    let fitting = use_fitting();
    // What was said, and of what: it holds until something changes.
    let said = RwSignal::new(None::<(Option<Draft>, String)>);
    let already = Memo::new(move |_| draft.with(|draft| draft.as_ref().and_then(|draft| fitting.has_newest(draft))));
    let off = move || draft.with(Option::is_none) || already.with(Option::is_some);
    let says = move || {
        let just = said.with(|said| said.as_ref().filter(|(of, _)| draft.with(|draft| draft == of)).cloned());
        let again = || {
            let at = already.get()?;
            Some(fitting.kept.get().map_or_else(|why| not_kept(why).to_string(), |()| already_in(&clock::hour(&at))))
        };
        just.map(|(_, words)| words).or_else(again).unwrap_or_default()
    };
    let put = move |_| {
        let Some(new) = draft.get_untracked() else {
            return said.set(Some((None, nothing.to_string())));
        };
        if already.with_untracked(Option::is_some) {
            // The status says so; what the browser refused is tried again.
            if fitting.kept.with_untracked(Result::is_err) {
                let _ = fitting.keep_again();
            }
            return said.set(None);
        }
        let kept = fitting.record(&new);
        if let Some(done) = on_done {
            done.run(());
        }
        said.set(Some((draft.get_untracked(), kept_words(kept))));
    };
    view! {
        <div class="into-log on-screen">
            <button type="button" id=id aria-disabled=move || off().to_string() on:click=put>{label}</button>
            <p class="done" role="status">{says}</p>
        </div>
        <ExportUnkept />
    }
}

/// What is said once something was put into the log.
pub(super) fn kept_words(kept: Result<(), Refused>) -> String {
    match kept {
        Ok(()) => in_log(&clock::hour(&clock::now())),
        Err(why) => not_kept(why).to_string(),
    }
}

/// While the browser does not keep the log: the build with its log as a file, which needs no room on the device.
#[component]
pub(super) fn ExportUnkept() -> impl IntoView {
    let (session, fitting) = (use_session(), use_fitting());
    let said = RwSignal::new(String::new());
    let export = move |_| {
        session.settle();
        let build = fitting.log.with_untracked(|log| session.open_build_for_a_file(log));
        let name = file_name(&rig_title(&build.document, session.units.get_untracked()));
        let done = files::download(&name, &builds::to_text(&[build]));
        say_again(said, if done { exported(&name) } else { FILE_NOT_WRITTEN.to_string() });
    };
    view! {
        <Show when=move || fitting.kept.with(Result::is_err)>
            <div class="into-log on-screen">
                <button type="button" class="export-unkept" on:click=export>{EXPORT}</button>
                <p class="done" role="status">{said}</p>
            </div>
        </Show>
    }
}
