//! What Trunk built, taken apart: its page without styles and scripts, the styles, and the icon.

use crate::split::Split;
use crate::{Outcome, files, root};
use std::path::{Path, PathBuf};

/// Where the page waits for its program: the first screen goes here.
pub const PLACE: &str = "<div id=\"waiting\"></div>";

/// All that is published, before it is put together.
#[derive(Debug)]
pub struct Built {
    /// The page without styles and scripts.
    pub html: String,
    /// The styles for the screen and for all media.
    pub screen_style: String,
    /// The styles for paper.
    pub print_style: String,
    /// The icon, an SVG.
    pub icon: String,
    /// The page's program.
    pub program: Split,
}

/// The folder that Trunk writes.
#[must_use]
pub fn trunk_folder() -> PathBuf {
    root().join("target").join("trunk")
}

impl Built {
    /// Reads a folder that Trunk wrote, all but the program: what Trunk has of that is not cut in two.
    pub fn read(folder: &Path, program: Split) -> Outcome<Built> {
        let mut built = Built {
            html: files::read_text(&folder.join("index.html"))?,
            screen_style: String::new(),
            print_style: String::new(),
            icon: String::new(),
            program,
        };
        while take_out(&mut built.html, "<script", "</script>").is_some() {}
        // Relative addresses need no base, and the policy can forbid one.
        take_out(&mut built.html, "<base", ">");
        while let Some(link) = take_out(&mut built.html, "<link", ">") {
            built.follow(&link, folder)?;
        }
        built.html = without_empty_lines(&built.html);
        if !built.html.contains(PLACE) {
            return Err(format!("{} is no page that Trunk made from index.html", folder.display()));
        }
        Ok(built)
    }

    /// Reads the file that a `link` element names.
    fn follow(&mut self, link: &str, folder: &Path) -> Outcome {
        let attribute = |name: &str| link.split_once(&format!(" {name}=\"")).and_then(|it| it.1.split('"').next());
        let address = attribute("href").ok_or_else(|| format!("{link} leads nowhere"))?;
        let text = || files::read_text(&folder.join(address.trim_start_matches("./")));
        match attribute("rel") {
            Some("stylesheet") if attribute("media") == Some("print") => self.print_style.push_str(&text()?),
            Some("stylesheet") => self.screen_style.push_str(&text()?),
            Some("icon") => self.icon = text()?,
            // Of the program.
            Some("modulepreload" | "preload") => {}
            _ => return Err(format!("what is {link} for? Teach xtask/src/built.rs")),
        }
        Ok(())
    }
}

fn without_empty_lines(html: &str) -> String {
    let lines = html.lines().filter(|line| !line.trim().is_empty());
    lines.fold(String::new(), |all, line| all + line + "\n")
}

/// Takes the first piece from `start` to `end` out of a text.
pub(crate) fn take_out(text: &mut String, start: &str, end: &str) -> Option<String> {
    let from = text.find(start)?;
    let to = from + text[from..].find(end)? + end.len();
    Some(text.drain(from..to).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_are_taken_out_whole() {
        let mut text = "a<b>c</b>d<b>".to_owned();
        assert_eq!(take_out(&mut text, "<b>", "</b>").as_deref(), Some("<b>c</b>"));
        assert_eq!(text, "ad<b>");
        assert_eq!(take_out(&mut text, "<b>", "</b>"), None, "a piece without an end stays");
    }
}
