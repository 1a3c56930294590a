//! Reads MathML as an eye does: a power stands on what is just before it, a fraction bar binds what it spans.

/// A number with its unit, as the page shows one.
pub(crate) fn number(value: f64, unit: &str) -> String {
    format!("<mn>{value}</mn><mtext>{unit}</mtext>")
}

/// What is seen, as a formula text; the fault when a tag is not closed or an element has the wrong parts.
pub(crate) fn seen(mathml: &str) -> Result<String, String> {
    let mut rest = mathml;
    let parts = elements(&mut rest, "")?;
    if rest.is_empty() { Ok(parts.concat()) } else { Err(format!("left over: {rest}")) }
}

/// Reads elements up to the closing tag of the one they stand in.
fn elements(rest: &mut &str, inside: &str) -> Result<Vec<String>, String> {
    let mut found = Vec::new();
    loop {
        if rest.is_empty() {
            return if inside.is_empty() { Ok(found) } else { Err(format!("{inside} is not closed")) };
        }
        if let Some(after) = rest.strip_prefix("</") {
            let (tag, after) = after.split_once('>').ok_or("a tag without an end")?;
            *rest = after;
            return if tag == inside { Ok(found) } else { Err(format!("{tag} closes {inside}")) };
        }
        if let Some(after) = rest.strip_prefix('<') {
            let (tag, after) = after.split_once('>').ok_or("a tag without an end")?;
            *rest = after;
            let parts = elements(rest, tag)?;
            found.push(element(tag, &parts)?);
        } else {
            let end = rest.find('<').unwrap_or(rest.len());
            let (words, after) = rest.split_at(end);
            found.push(words.to_string());
            *rest = after;
        }
    }
}

fn element(tag: &str, parts: &[String]) -> Result<String, String> {
    Ok(match (tag, parts) {
        ("mi" | "mn" | "mtext", [word]) => word.clone(),
        ("mo", [sign]) => format!(" {sign} "),
        ("mrow", parts) if !parts.is_empty() => parts.concat(),
        ("mfrac", [over, under]) => format!("(({over}) / ({under}))"),
        ("msup", [base, power]) => format!("{}^{power}", base.trim_end()),
        ("msub", [base, index]) => format!("{base}_{index}"),
        ("msqrt", parts) if !parts.is_empty() => format!("(√({}))", parts.concat()),
        ("mroot", [of, degree]) if degree == "3" => format!("(∛({of}))"),
        _ => return Err(format!("<{tag}> with {} parts", parts.len())),
    })
}
