//! The page's HTML: what Trunk made of index.html, with content policy, styles, scripts and first screen in it.

use crate::built::{Built, PLACE};
use crate::policy;

const RESCUE: &str = include_str!("../../src/shell/rescue.js");
const FIRST_SCREEN: &str = include_str!("../../src/shell/first.html");

/// What the page among other files and the page in one file each have of their own.
#[derive(Debug, Default)]
pub struct Page {
    /// Links in the head.
    pub links: String,
    /// The script in the head that asks for the program while the page is still read.
    pub early_script: Option<String>,
    /// Elements before the last script.
    pub elements: String,
    /// The script that runs last, and starts the program.
    pub start_script: String,
    /// The script that the page in one file adds by itself. A page among other files has none, and may load them.
    pub added_script: Option<String>,
}

impl Page {
    /// What this page may run, show and load.
    #[must_use]
    pub fn policy(&self, built: &Built) -> String {
        let [early, added] = [&self.early_script, &self.added_script].map(Option::as_deref);
        let scripts = [Some(RESCUE), early, Some(&self.start_script), added];
        let scripts: Vec<&str> = scripts.into_iter().flatten().collect();
        policy::policy(&scripts, &[&built.screen_style, &built.print_style], self.added_script.is_none())
    }

    /// The whole page, with everything in it that it needs before its program.
    #[must_use]
    pub fn html(&self, built: &Built) -> String {
        let screen = FIRST_SCREEN.replace('\n', "");
        let first_screen = format!("<div id=\"waiting\">{screen}</div>");
        let end = format!("{}<script>{}</script>\n</body>", self.elements, self.start_script);
        let html = built.html.replacen("<meta charset=\"utf-8\">", &self.head(built), 1);
        html.replacen(PLACE, &first_screen, 1).replacen("</body>", &end, 1)
    }

    /// The start of the head. The policy comes first, for it holds for what comes after it; the first screen is shown
    /// whole, not from the top down.
    fn head(&self, built: &Built) -> String {
        let Built { screen_style, print_style, .. } = built;
        let (policy, links) = (self.policy(built), &self.links);
        let early = self.early_script.as_ref().map(|script| format!("\n  <script>{script}</script>"));
        let early = early.unwrap_or_default();
        format!(
            "<meta charset=\"utf-8\">\n  \
             <meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n  \
             <link rel=\"expect\" href=\"#waiting\" blocking=\"render\">\n  \
             <script>{RESCUE}</script>{links}{early}\n  \
             <style>{screen_style}</style>\n  \
             <style media=\"print\">{print_style}</style>"
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::built::take_out;
    use crate::digest;
    use crate::split::Split;

    #[test]
    fn the_policy_allows_the_scripts_and_styles_that_the_page_carries() {
        let built = Built {
            html: format!("<meta charset=\"utf-8\">{PLACE}</body>"),
            screen_style: "p {}".to_owned(),
            print_style: "a {}".to_owned(),
            icon: String::new(),
            program: Split { glue: String::new(), wasm: Vec::new(), rest: Vec::new() },
        };
        let page = Page { early_script: Some("ask()".to_owned()), start_script: "go()".to_owned(), ..Page::default() };
        let (mut html, policy) = (page.html(&built), page.policy(&built));
        assert!(html.contains(&format!("content=\"{policy}\"")), "{html}");
        let mut found = 0;
        for (start, end) in [("<script>", "</script>"), ("<style", "</style>")] {
            while let Some(piece) = take_out(&mut html, start, end) {
                let inside = piece.split_once('>').map_or("", |it| it.1).trim_end_matches(end);
                assert!(policy.contains(&digest::integrity(inside.as_bytes())), "{inside}");
                found += 1;
            }
        }
        assert_eq!(found, 5);
    }
}
