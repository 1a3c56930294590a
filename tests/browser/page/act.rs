//! What a reader does: click or tap, type, press keys.

use super::{Key, PATIENCE, Page, done};
use fantoccini::actions::{InputSource, KeyAction, KeyActions, PointerAction, TouchActions};
use fantoccini::elements::Element;
use serde_json::Value;
use std::time::{Duration, Instant};
use tokio::time::sleep;

/// Brings an element to where a finger reaches it, waits until it rests there (five frames in the same place, or two
/// seconds), and notes what the next click is on. (A page that the click itself loads knows nothing of that.)
const TAP: &str = "
    const target = arguments[0];
    target.scrollIntoView({ block: 'center', behavior: 'instant' });
    const place = () => { const box = target.getBoundingClientRect(); return [box.x, box.y, box.width].join(); };
    return new Promise(done => {
        const start = performance.now();
        let before = place(), still = 0;
        const look = () => {
            const now = place();
            still = now === before ? still + 1 : 0;
            before = now;
            if (still < 5 && performance.now() - start < 2000) return requestAnimationFrame(look);
            window.journeyTap = 'under way';
            const note = ({ target: hit }) => {
                const acts = hit.closest && hit.closest('a, button, input, select, summary, label, textarea');
                window.journeyTap = target.contains(hit) ? 'on it' : acts ? 'on something else' : 'on nothing';
            };
            addEventListener('click', note, { capture: true, once: true });
            done();
        };
        requestAnimationFrame(look);
    });
";

/// Who taps on nothing taps again, as often as this.
const TAPS: usize = 3;

impl Page {
    /// Clicks, or taps on a touch screen.
    pub(crate) async fn click(&self, selector: &str) {
        let element = self.find(selector).await;
        if !self.screen.get().touch {
            return done(&format!("clicking {selector}"), element.click().await);
        }
        let target = vec![done(selector, serde_json::to_value(&element))];
        let mut hit = Value::Null;
        for _ in 0..TAPS {
            hit = self.tap(selector, &element, &target).await;
            if hit != "on nothing" {
                break;
            }
        }
        assert_eq!(hit, "on it", "tapping {selector}, which may be moving, covered or disabled");
    }

    /// Taps once; gives what the click was on.
    async fn tap(&self, selector: &str, element: &Element, target: &[Value]) -> Value {
        self.script(TAP, target.to_vec()).await;
        let finger = TouchActions::new("finger".to_owned())
            .then(PointerAction::MoveToElement { element: element.clone(), duration: None, x: 0.0, y: 0.0 })
            .then(PointerAction::Down { button: 0 })
            .then(PointerAction::Up { button: 0 });
        done(&format!("tapping {selector}"), self.client.perform_actions(finger).await);
        // The browser makes the click from the touches, and may do so after chromedriver's answer.
        let start = Instant::now();
        let ask = "return window.journeyTap ?? 'on it'";
        let mut hit = self.script(ask, vec![]).await;
        while hit == "under way" && start.elapsed() < PATIENCE {
            sleep(Duration::from_millis(10)).await;
            hit = self.script(ask, vec![]).await;
        }
        hit
    }

    /// Opens the Saved view. It comes to its title first, and what a finger aims at moves with it.
    pub(crate) async fn open_saved(&self) {
        self.click("#view-saved").await;
        sleep(Duration::from_millis(400)).await;
    }

    /// Replaces what the input with this id holds by typing, key by key.
    pub(crate) async fn enter(&self, id: &str, text: &str) {
        let selector = format!("#{id}");
        self.click(&selector).await;
        self.press_with(Key::Control, 'a').await;
        if text.is_empty() {
            self.press(Key::Delete).await;
        } else {
            done(&format!("typing into {selector}"), self.find(&selector).await.send_keys(text).await);
        }
    }

    /// Chooses an option by its label in the select with this id.
    pub(crate) async fn choose(&self, id: &str, label: &str) {
        let list = self.find(&format!("#{id}")).await;
        done(&format!("choosing {label:?} in #{id}"), list.select_by_label(label).await);
    }

    /// Presses a key where the focus is: `Key::Tab`, `Key::Enter`, `'x'`.
    pub(crate) async fn press(&self, key: impl Into<char>) {
        let value = key.into();
        let keys = KeyActions::new("keys".to_owned()).then(KeyAction::Down { value }).then(KeyAction::Up { value });
        done(&format!("pressing {value:?}"), self.client.perform_actions(keys).await);
    }

    /// Presses a key while another is held: `press_with(Key::Shift, Key::Tab)`.
    pub(crate) async fn press_with(&self, held: impl Into<char>, key: impl Into<char>) {
        let (held, value) = (held.into(), key.into());
        let keys = KeyActions::new("keys".to_owned())
            .then(KeyAction::Down { value: held })
            .then(KeyAction::Down { value })
            .then(KeyAction::Up { value })
            .then(KeyAction::Up { value: held });
        done(&format!("pressing {value:?} with {held:?}"), self.client.perform_actions(keys).await);
    }

    /// Lets so many milliseconds go by in the page.
    pub(crate) async fn pause(&self, milliseconds: u32) {
        let code = "return new Promise(done => setTimeout(done, arguments[0]))";
        self.script(code, vec![milliseconds.into()]).await;
    }

    /// Runs JavaScript in the page (`return ...` gives a value; `arguments[0]` is the first of `arguments`).
    pub(crate) async fn script(&self, code: &str, arguments: Vec<Value>) -> Value {
        done(&format!("running {code}"), self.client.execute(code, arguments).await)
    }
}
