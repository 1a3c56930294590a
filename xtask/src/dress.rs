//! From what Trunk built to what is published: one page with its styles and first screen inside,
//! files named by their content, and the worker that keeps them.

use crate::icons::{Icon, Purpose};
use crate::split::Split;
use crate::{Outcome, digest, policy, root, single, worker};
use std::fs;
use std::path::Path;

const RESCUE: &str = include_str!("../../src/shell/rescue.js");
const BOOT: &str = include_str!("../../src/shell/boot.js");
const FETCH_REST: &str = include_str!("../../src/shell/fetch_rest.js");
const LOAD: &str = include_str!("../../src/shell/load.js");
const OFFLINE: &str = include_str!("../../src/shell/offline.js");
const MANIFEST: &str = include_str!("../../src/shell/manifest.json");

/// Where the first screen goes.
const PLACE: &str = "<div id=\"waiting\"></div>";

/// What Trunk built, taken apart.
#[derive(Debug)]
pub struct Built {
    /// The page without styles and scripts.
    pub html: String,
    /// The styles for the screen and for all media, then those for paper.
    pub styles: [String; 2],
    /// The drawn icon.
    pub icon: String,
    /// The page's program.
    pub program: Split,
}

impl Built {
    /// Reads a folder that Trunk wrote, all but the program.
    pub fn read(folder: &Path, program: Split) -> Outcome<Built> {
        let text = |name: &str| {
            let file = folder.join(name.trim_start_matches("./"));
            fs::read_to_string(&file).map_err(|reason| format!("{} cannot be read ({reason})", file.display()))
        };
        let mut html = text("index.html")?;
        while cut(&mut html, "<script", "</script>").is_some() {}
        // Relative addresses need no base, and the policy can forbid one.
        cut(&mut html, "<base", ">");
        let mut built = Built { html: String::new(), styles: Default::default(), icon: String::new(), program };
        while let Some(link) = cut(&mut html, "<link", ">") {
            let value = |name: &str| link.split_once(&format!(" {name}=\"")).and_then(|it| it.1.split('"').next());
            let file = value("href").ok_or_else(|| format!("{link} leads nowhere"))?;
            match value("rel") {
                Some("stylesheet") => {
                    built.styles[usize::from(value("media") == Some("print"))].push_str(&bare_style(&text(file)?));
                }
                Some("icon") => built.icon = text(file)?,
                Some("modulepreload" | "preload") => {}
                _ => return Err(format!("what is {link} for? Teach xtask/src/dress.rs")),
            }
        }
        html.retain(|letter| letter != '\r');
        built.html =
            html.lines().filter(|line| !line.trim().is_empty()).fold(String::new(), |all, line| all + line + "\n");
        if !built.html.contains(PLACE) {
            return Err(format!("{} is no page that Trunk made from index.html", folder.display()));
        }
        Ok(built)
    }

    /// The page with everything in it that it needs before its program.
    ///
    /// `links` go into the head, and `ahead` is the script behind them; `start` is the one that runs last, `before` what
    /// stands before it. `packed` is the script that a page alone has inside and adds by itself; one among other files
    /// (`None`) loads them.
    #[must_use]
    pub fn page(&self, [links, ahead]: [&str; 2], before: &str, start: &str, packed: Option<&str>) -> String {
        let rescue = bare_script(RESCUE);
        let [screen, paper] = &self.styles;
        let scripts = [&rescue, ahead, start, packed.unwrap_or_default()].into_iter();
        let scripts: Vec<&str> = scripts.filter(|script| !script.is_empty()).collect();
        let policy = policy::policy(&scripts, &[screen, paper], packed.is_none());
        let ahead = if ahead.is_empty() { String::new() } else { format!("\n  <script>{ahead}</script>") };
        // The policy first: it holds for what comes after it. The first screen is shown whole, not from the top down.
        let head = format!(
            "<meta charset=\"utf-8\">\n  <meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n  \
             <link rel=\"expect\" href=\"#waiting\" blocking=\"render\">\n  <script>{rescue}</script>{links}{ahead}\n  <style>{screen}</style>\n  <style media=\"print\">{paper}</style>"
        );
        let first = format!("<div id=\"waiting\">{}</div>", first_screen());
        let end = format!("{before}<script>{start}</script>\n</body>");
        self.html.replacen("<meta charset=\"utf-8\">", &head, 1).replacen(PLACE, &first, 1).replacen("</body>", &end, 1)
    }
}

/// The first screen as the live page shows it; a journey compares the two.
fn first_screen() -> String {
    include_str!("../../src/shell/first.html").replace('\n', "")
}

/// Writes both products: a folder to publish, and a folder with one file to carry.
pub fn dress(built: &Built, dist: &Path, alone: &Path) -> Outcome {
    empty(dist)?;
    let icon = Icon::read(&built.icon)?;
    let Split { glue, wasm, rest } = &built.program;
    let named = |kind: &str, bytes: &[u8], end: &str| format!("linkwright{kind}-{}.{end}", digest::mark(bytes));
    let rest_name = named("-rest", rest, "wasm");
    // The glue knows the second part by name and hash; the page knows the glue and the first part so.
    let fetch = bare_script(FETCH_REST).replacen("/* name */", &rest_name, 1);
    let glue = glue.clone() + &fetch.replacen("/* integrity */", &digest::integrity(rest), 1);
    let integrity = digest::integrity(glue.as_bytes());
    let (glue_name, wasm_name) = (named("", glue.as_bytes(), "js"), named("", wasm, "wasm"));
    let load = bare_script(LOAD).replacen("/* name */", &wasm_name, 1);
    let load = load.replacen("/* integrity */", &digest::integrity(wasm), 1);
    let links = format!(
        "\n  <link rel=\"modulepreload\" href=\"{glue_name}\" integrity=\"{integrity}\">\
         \n  <link rel=\"manifest\" href=\"linkwright.webmanifest\">\
         \n  <link rel=\"icon\" type=\"image/svg+xml\" href=\"icon.svg\">\
         \n  <link rel=\"apple-touch-icon\" href=\"icon-192.png\">"
    );
    let start = [OFFLINE, BOOT].map(bare_script).concat();
    let page = built.page([&links, &load], "", &start, None);
    let files: [(&str, &[u8]); 9] = [
        ("index.html", page.as_bytes()),
        (&glue_name, glue.as_bytes()),
        (&wasm_name, wasm),
        (&rest_name, rest),
        ("linkwright.webmanifest", MANIFEST.as_bytes()),
        ("icon.svg", built.icon.as_bytes()),
        ("icon-192.png", &icon.png(192, Purpose::Any)?),
        ("icon-512.png", &icon.png(512, Purpose::Any)?),
        ("icon-maskable-512.png", &icon.png(512, Purpose::Maskable)?),
    ];
    for (name, bytes) in files {
        write(dist, name, bytes)?;
    }
    worker::write(dist)?;
    let policy = policy_of(&page)?;
    let lasting = [glue_name.clone(), wasm_name.clone(), rest_name.clone()];
    let changing = files.iter().map(|(name, _)| *name).filter(|name| !lasting.iter().any(|lasting| lasting == name));
    let changing: Vec<String> = changing.chain([worker::WORKER]).map(str::to_owned).collect();
    write(dist, policy::HEADERS, policy::headers(policy, &lasting, &changing).as_bytes())?;

    empty(alone)?;
    write(alone, single::NAME, single::file(built).as_bytes())
}

/// The policy that a page carries.
pub fn policy_of(page: &str) -> Outcome<&str> {
    let carried = page.split_once("\"Content-Security-Policy\" content=\"").and_then(|it| it.1.split('"').next());
    carried.ok_or_else(|| "the page carries no policy".to_owned())
}

/// Where what Trunk builds lies until it is dressed.
#[must_use]
pub fn raw() -> std::path::PathBuf {
    root().join("target").join("trunk")
}

/// Makes a folder anew.
pub fn empty(folder: &Path) -> Outcome {
    let _ = fs::remove_dir_all(folder);
    fs::create_dir_all(folder).map_err(|reason| format!("{} cannot be made ({reason})", folder.display()))
}

/// Reads a file.
pub fn read(file: &Path) -> Outcome<Vec<u8>> {
    fs::read(file).map_err(|reason| format!("{} cannot be read ({reason})", file.display()))
}

/// Writes a file into a folder.
pub fn write(folder: &Path, name: &str, bytes: &[u8]) -> Outcome {
    let file = folder.join(name);
    fs::write(&file, bytes).map_err(|reason| format!("{} cannot be written ({reason})", file.display()))
}

/// Takes the first piece from `start` to `end` out of a text.
fn cut(text: &mut String, start: &str, end: &str) -> Option<String> {
    let from = text.find(start)?;
    let to = from + text[from..].find(end)? + end.len();
    let piece = text[from..to].to_owned();
    text.replace_range(from..to, "");
    Some(piece)
}

/// A style sheet without comments, indentation and the spaces that only we read.
fn bare_style(text: &str) -> String {
    let mut text = text.to_owned();
    while cut(&mut text, "/*", "*/").is_some() {}
    let text = lines(&text);
    let bare = |code: &str| {
        let spaces = [(" {", "{"), ("{ ", "{"), (": ", ":"), ("; ", ";"), (", ", ","), (" }", "}"), (";}", "}")];
        spaces.iter().fold(code.to_owned(), |code, (wide, narrow)| code.replace(wide, narrow))
    };
    // Every other piece stands between quotation marks.
    let pieces =
        text.split('"').enumerate().map(|(at, piece)| if at % 2 == 0 { bare(piece) } else { piece.to_owned() });
    pieces.collect::<Vec<_>>().join("\"")
}

/// A script without lines of comment and indentation. (None of ours has text over several lines.)
#[must_use]
pub fn bare_script(text: &str) -> String {
    let code: Vec<&str> = text.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
    lines(&code.join("\n"))
}

fn lines(text: &str) -> String {
    let kept = text.lines().map(str::trim).filter(|line| !line.is_empty());
    kept.fold(String::new(), |all, line| all + line + "\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_are_cut_out_whole() {
        let mut text = "a<b>c</b>d<b>".to_owned();
        assert_eq!(cut(&mut text, "<b>", "</b>").as_deref(), Some("<b>c</b>"));
        assert_eq!(text, "ad<b>");
        assert_eq!(cut(&mut text, "<b>", "</b>"), None, "a piece without an end stays");
    }

    #[test]
    fn what_people_read_in_a_file_is_not_sent() {
        let style = "/* why */\n  a, i > b { b: c; d: calc(1px + 2px) }\n  p::after { content: \"… : x, \"; }\n\n";
        let bare = "a,i > b{b:c;d:calc(1px + 2px)}\np::after{content:\"… : x, \"}\n";
        assert_eq!(bare_style(style), bare);
        assert_eq!(bare_script("// why\n  go('//');\n"), "go('//');\n");
    }

    #[test]
    fn the_policy_allows_the_scripts_that_the_page_carries() -> Outcome {
        let built = Built {
            html: format!("<meta charset=\"utf-8\">{PLACE}</body>"),
            styles: ["p {}", "a {}"].map(str::to_owned),
            icon: String::new(),
            program: Split { glue: String::new(), wasm: Vec::new(), rest: Vec::new() },
        };
        let mut page = built.page(["", "ask()"], "", "go()", None);
        let policy = policy_of(&page)?.to_owned();
        let mut found = 0;
        for (start, end) in [("<script>", "</script>"), ("<style", "</style>")] {
            while let Some(piece) = cut(&mut page, start, end) {
                let inside = piece.split_once('>').map_or("", |it| it.1).trim_end_matches(end);
                assert!(policy.contains(&digest::integrity(inside.as_bytes())), "{inside}");
                found += 1;
            }
        }
        assert_eq!(found, 5);
        Ok(())
    }
}
