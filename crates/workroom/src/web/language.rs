//! Which language the reader wants: the one she chose, or else the first of her browser's that is spoken here.
//!
//! The choice is kept in the browser, not with a project: the same table may be read by two people. Handouts are printed
//! in either language whatever the pages speak.

use axum::http::{HeaderMap, header};
use maud::{Markup, html};
use words::Language;

use super::say;

/// The name of the cookie that keeps the choice.
const COOKIE: &str = "language";
/// Chosen: a year, the time a browser keeps what it is told to keep.
const SECONDS: u32 = 31_536_000;

/// The language of a request, by its headers.
pub(super) fn wanted(headers: &HeaderMap) -> Language {
    let texts = |name| headers.get_all(name).iter().filter_map(|value| value.to_str().ok());
    let crumbs = texts(header::COOKIE).flat_map(|all| all.split(';')).filter_map(|crumb| crumb.trim().split_once('='));
    let chosen = crumbs.filter(|(name, _)| *name == COOKIE).find_map(|(_, tag)| Language::of_tag(tag));
    // Browsers send what they like best first; how much less the others are liked does not matter here.
    let liked = texts(header::ACCEPT_LANGUAGE).flat_map(|all| all.split(','));
    let mut liked = liked.filter_map(|one| Language::of_tag(one.split(';').next().unwrap_or_default().trim()));
    chosen.or_else(|| liked.next()).unwrap_or_default()
}

/// What keeps a choice in the browser.
pub(super) fn kept(language: Language) -> String {
    format!("{COOKIE}={}; Path=/; Max-Age={SECONDS}; SameSite=Strict; HttpOnly", language.tag())
}

/// Where to go after a choice: a page of ours, or the first one.
pub(super) fn after(page: &str) -> &str {
    let plain = |sign: u8| sign.is_ascii_alphanumeric() || matches!(sign, b'/' | b'-');
    let ours = page.starts_with('/') && !page.starts_with("//") && page.bytes().all(plain);
    if ours { page } else { "/" }
}

/// The other languages, a button each, in their own words.
pub(super) fn choice(page: &str) -> Markup {
    let spoken = words::spoken();
    html! {
        form.languages method="post" action="/language" aria-label=(say("language-choice", &[])) {
            input type="hidden" name="page" value=(page);
            @for language in Language::ALL {
                @if language == spoken { span aria-current="true" lang=(language.tag()) { (language.own_name()) } }
                @else {
                    button.quiet type="submit" name="language" value=(language.tag()) lang=(language.tag()) {
                        (language.own_name())
                    }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use axum::http::{HeaderName, HeaderValue};

    use super::*;

    fn of(all: &[(HeaderName, &str)]) -> Language {
        wanted(&all.iter().map(|(name, value)| (name.clone(), HeaderValue::from_str(value).unwrap())).collect())
    }

    #[test]
    fn the_choice_counts_before_what_the_browser_likes() {
        assert_eq!(of(&[]), Language::English);
        assert_eq!(of(&[(header::ACCEPT_LANGUAGE, "fr, de-CH;q=0.9, en;q=0.8")]), Language::German);
        assert_eq!(of(&[(header::ACCEPT_LANGUAGE, "fr")]), Language::English);
        let both = [(header::ACCEPT_LANGUAGE, "de"), (header::COOKIE, "other=1; language=en")];
        assert_eq!(of(&both), Language::English);
        assert_eq!(of(&[(header::ACCEPT_LANGUAGE, "de"), (header::COOKIE, "language=<b>")]), Language::German);
    }

    #[test]
    fn only_our_own_pages_are_gone_back_to() {
        assert_eq!(after("/w/3/paper"), "/w/3/paper");
        for strange in ["", "//evil.example", "http://evil.example", "/w/1\r\nSet-Cookie: a=b", "/\\evil"] {
            assert_eq!(after(strange), "/", "{strange}");
        }
    }
}
