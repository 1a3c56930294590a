//! What the page may do, as a content policy, and the response headers that say so to a host.

use crate::digest::integrity;

/// The file of headers that many hosts of plain files read from the folder they serve.
pub const HEADERS: &str = "_headers";

/// Who may run and show what: the given inline scripts and styles, and nothing of another origin.
///
/// A page among other files (`hosted`) may also load what lies beside it.
#[must_use]
pub fn policy(scripts: &[&str], styles: &[&str], hosted: bool) -> String {
    let (scripts, styles) = (hashes(scripts), hashes(styles));
    let files = if hosted {
        "img-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'"
    } else {
        "img-src data:"
    };
    let own = if hosted { "'self' " } else { "" };
    // WebAssembly is compiled: browsers count that as a kind of evaluation.
    format!(
        "default-src 'none'; script-src {own}{scripts} 'wasm-unsafe-eval'; style-src {styles}; {files}; base-uri 'none'; form-action 'none'"
    )
}

fn hashes(texts: &[&str]) -> String {
    let hashes: Vec<String> = texts.iter().map(|text| format!("'{}'", integrity(text.as_bytes()))).collect();
    hashes.join(" ")
}

/// The text of [`HEADERS`]. Files named by their content never change; all others are asked about every time.
#[must_use]
pub fn headers(policy: &str, lasting: &[&str], changing: &[&str]) -> String {
    let mut text = format!(
        "/*\n  Content-Security-Policy: {policy}; frame-ancestors 'none'\n  Referrer-Policy: no-referrer\n  \
         X-Content-Type-Options: nosniff\n  Cross-Origin-Resource-Policy: same-origin\n  \
         Permissions-Policy: camera=(), geolocation=(), microphone=()\n"
    );
    let mut cache = |name: &str, how: &str| text.push_str(&format!("/{name}\n  Cache-Control: {how}\n"));
    for name in lasting {
        cache(name, "public, max-age=31536000, immutable");
    }
    // The folder itself is the page.
    for name in [&""].into_iter().chain(changing) {
        cache(name, "no-cache");
    }
    text
}

/// The headers that such a text gives to a path: lines that begin with `/` name a path, or with `*`
/// at the end all that begin so; indented lines below are its headers.
#[must_use]
pub fn headers_for<'a>(text: &'a str, path: &str) -> Vec<(&'a str, &'a str)> {
    let mut found = Vec::new();
    let mut applies = false;
    for line in text.lines() {
        if line.starts_with('/') {
            let line = line.trim_end();
            applies = line.strip_suffix('*').map_or(line == path, |start| path.starts_with(start));
        } else if applies && let Some((name, value)) = line.split_once(':') {
            found.push((name.trim(), value.trim()));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_allowed_by_a_word_that_allows_everything() {
        for hosted in [true, false] {
            let text = policy(&["a()", "b()"], &["p{}"], hosted);
            assert!(text.starts_with("default-src 'none'; "), "{text}");
            assert!(!text.contains("'unsafe-inline'") && !text.contains("'unsafe-eval'"), "{text}");
            assert!(!text.contains("http") && !text.contains(" *"), "{text}");
            assert_eq!(text.matches("sha256-").count(), 3, "{text}");
        }
    }

    #[test]
    fn headers_are_read_as_they_are_written() {
        let text = headers("default-src 'none'", &["app-1.js"], &["index.html"]);
        let cache = |path: &str| -> Vec<String> {
            let all = headers_for(&text, path).into_iter();
            all.filter(|(name, _)| *name == "Cache-Control").map(|(_, value)| value.to_owned()).collect()
        };
        assert_eq!(cache("/app-1.js"), ["public, max-age=31536000, immutable"]);
        assert_eq!(cache("/"), ["no-cache"]);
        assert_eq!(cache("/index.html"), ["no-cache"]);
        assert_eq!(cache("/other"), [""; 0]);
        let policy = headers_for(&text, "/other")[0];
        assert_eq!(policy, ("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'"));
    }
}
