//! The loopback address, limits, and who may ask.
//!
//! Only this computer is listened to. A request must name the address it was sent to (`Host`), so that no other name
//! can be pointed here; a change must come from one of our own pages (`Origin`). Bodies and time are limited; how long
//! the head of a request may take is kept by `arrival`.

use std::future::poll_fn;
use std::net::{Ipv4Addr, SocketAddr};
use std::pin::Pin;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::body::{Body, HttpBody as _};
use axum::extract::{DefaultBodyLimit, FromRequest, Multipart, Query, Request, State};
use axum::http::{HeaderMap, HeaderValue, Response, StatusCode, header};
use axum::response::IntoResponse;
use words::Language;

use super::answer::{Answer, Asked, Method, answer};
use super::arrival::{Door, Patience};
use super::room::Room;
use super::{language, say, shell};
use crate::cli::seconds_now;

/// Most bytes of one request. Chosen: a backup with many pictures; a project file is a hundredth of it.
const MOST_BYTES: usize = 64 << 20;
/// Most bytes that are heard out, and thrown away, so that who sends too much comes to read why: a browser reads an
/// answer only after it has sent everything. Chosen: on one computer these are about a second.
const MOST_HEARD: usize = 1 << 30;
/// How long an answer may take: a plan that takes longer answers with a page that waits.
const ANSWER: Duration = Duration::from_secs(120);

/// How long a request may take.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// Its head, from the first byte of it; and then its body.
    pub arrival: Duration,
    /// Silence on a connection between two requests.
    pub silence: Duration,
}

impl Default for Limits {
    /// Chosen: on one computer everything arrives within a second; these are for one that is very busy.
    fn default() -> Limits {
        Limits { arrival: Duration::from_secs(20), silence: Duration::from_secs(120) }
    }
}

/// Nothing inline, nothing from elsewhere; drawings carry their pictures inside.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; \
                      connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// Where to listen, on this computer only.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Address {
    /// The port; 0 for any that is free.
    pub port: u16,
}

/// Why the pages cannot be served.
#[derive(Debug, thiserror::Error)]
pub enum ServeError {
    /// The port is taken, or may not be had.
    #[error("{0}")]
    Port(std::io::Error),
    /// The server stopped.
    #[error("{0}")]
    Stopped(std::io::Error),
}

struct Desk {
    room: Room,
    port: u16,
    limits: Limits,
}

/// Serves the pages until the process ends; tells the address once it can be opened.
///
/// # Errors
/// [`ServeError`] if the port cannot be had.
pub fn serve(room: Room, address: Address, limits: Limits, told: impl FnOnce(&str)) -> Result<(), ServeError> {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        .enable_all()
        .build()
        .map_err(ServeError::Stopped)?;
    runtime.block_on(async {
        let at = SocketAddr::from((Ipv4Addr::LOCALHOST, address.port));
        let listener = tokio::net::TcpListener::bind(at).await.map_err(ServeError::Port)?;
        let port = listener.local_addr().map_err(ServeError::Port)?.port();
        let desk = Arc::new(Desk { room, port, limits });
        // The library's own limit, 2 MB, is less than a phone's photo: `gathered` keeps ours.
        let router = Router::new().fallback(enter).layer(DefaultBodyLimit::disable()).with_state(desk);
        told(&format!("http://127.0.0.1:{port}/"));
        let patience = Patience { head: limits.arrival, silence: limits.silence };
        // The same answer for all, made once and kept as long as it serves: `leak` only spares counting who has it.
        let door = Door { listener, patience, too_slow: too_slow().leak() };
        let ended = axum::serve(door, router).with_graceful_shutdown(async {
            // Without a signal to wait for, it serves until the process ends.
            let _ = tokio::signal::ctrl_c().await;
        });
        ended.await.map_err(ServeError::Stopped)
    })
}

async fn enter(State(desk): State<Arc<Desk>>, request: Request) -> Response<Body> {
    let spoken = language::wanted(request.headers());
    let mut response = entered(desk, request, spoken).await;
    // The same address says something else to who reads another language.
    response.headers_mut().insert(header::VARY, HeaderValue::from_static("Cookie, Accept-Language"));
    response
}

async fn entered(desk: Arc<Desk>, request: Request, spoken: Language) -> Response<Body> {
    // What is refused is worded only here: a language is spoken on one thread, and reading may change threads.
    let refuse = |refused| written(words::speaking(spoken, || page_of(refused)));
    if let Err(refused) = may_ask(request.method(), request.headers(), desk.port) {
        return refuse(refused);
    }
    let asked = match tokio::time::timeout(desk.limits.arrival, read(request)).await {
        Ok(Ok(asked)) => asked,
        Ok(Err(refused)) => return refuse(refused),
        Err(_) => return refuse(refusal(StatusCode::REQUEST_TIMEOUT, "asked-slowly")),
    };
    if asked.method == Method::Post && asked.path == "/language" {
        return chosen(&asked, spoken);
    }
    // Planning and drawing take a processor, so they leave the threads that listen.
    let work = tokio::task::spawn_blocking(move || words::speaking(spoken, || answer(&desk.room, &asked)));
    match tokio::time::timeout(ANSWER, work).await {
        Ok(Ok(answered)) => written(answered),
        Ok(Err(_)) => refuse(refusal(StatusCode::INTERNAL_SERVER_ERROR, "asked-broken")),
        Err(_) => refuse(refusal(StatusCode::GATEWAY_TIMEOUT, "asked-long")),
    }
}

/// Keeps the reader's choice of a language and goes back to her page.
fn chosen(asked: &Asked, spoken: Language) -> Response<Body> {
    let chosen = Language::of_tag(asked.field("language")).unwrap_or(spoken);
    let mut response = written(Answer::see(language::after(asked.field("page")).to_owned()));
    if let Ok(kept) = HeaderValue::from_str(&language::kept(chosen)) {
        response.headers_mut().insert(header::SET_COOKIE, kept);
    }
    response
}

/// Why a request is not answered: the status, and the name of the message that says so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Refused {
    status: StatusCode,
    id: &'static str,
}

const fn refusal(status: StatusCode, id: &'static str) -> Refused {
    Refused { status, id }
}

fn page_of(refused: Refused) -> Answer {
    let said = maud::html! { p { (say(refused.id, &[])) } };
    Answer::page(refused.status.as_u16(), shell::plain(&say("asked-title", &[]), &said))
}

/// The whole answer to who did not even say in time what is asked for, so that nobody knows in which language.
fn too_slow() -> Vec<u8> {
    let page = words::speaking(Language::default(), || page_of(refusal(StatusCode::REQUEST_TIMEOUT, "asked-slowly")));
    let head = format!(
        "HTTP/1.1 408 Request Timeout\r\ncontent-type: {}\r\ncontent-length: {}\r\nconnection: close\r\n\r\n",
        page.kind,
        page.body.len()
    );
    [head.into_bytes(), page.body].concat()
}

/// Whether a request may be answered at all.
fn may_ask(method: &axum::http::Method, headers: &HeaderMap, port: u16) -> Result<(), Refused> {
    let text = |name| headers.get(name).and_then(|value: &HeaderValue| value.to_str().ok());
    let ours = [format!("127.0.0.1:{port}"), format!("localhost:{port}")];
    if !text(header::HOST).is_some_and(|host| ours.iter().any(|own| own == host)) {
        return Err(refusal(StatusCode::MISDIRECTED_REQUEST, "asked-host"));
    }
    if method == axum::http::Method::GET || method == axum::http::Method::HEAD {
        return Ok(());
    }
    if method != axum::http::Method::POST {
        return Err(refusal(StatusCode::METHOD_NOT_ALLOWED, "asked-method"));
    }
    let from_us = text(header::ORIGIN).is_some_and(|origin| ours.iter().any(|own| origin == format!("http://{own}")));
    if from_us { Ok(()) } else { Err(refusal(StatusCode::FORBIDDEN, "asked-origin")) }
}

/// A request, read whole.
async fn read(request: Request) -> Result<Asked, Refused> {
    let bad = || refusal(StatusCode::BAD_REQUEST, "asked-form");
    let method = if request.method() == axum::http::Method::POST { Method::Post } else { Method::Get };
    let path = request.uri().path().to_owned();
    let query = Query::<Vec<(String, String)>>::try_from_uri(request.uri()).map_err(|_| bad())?.0;
    let kind = request.headers().get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok()).unwrap_or("").to_owned();
    let mut fields = Vec::new();
    if method == Method::Post {
        let (parts, body) = request.into_parts();
        let bytes = gathered(body).await?;
        let empty = bytes.is_empty();
        let whole = Request::from_parts(parts, Body::from(bytes));
        if kind.starts_with("multipart/form-data") {
            let mut many = Multipart::from_request(whole, &()).await.map_err(|_| bad())?;
            while let Some(field) = many.next_field().await.map_err(|_| bad())? {
                let name = field.name().unwrap_or_default().to_owned();
                fields.push((name, field.bytes().await.map_err(|_| bad())?.to_vec()));
            }
        } else {
            let form = axum::Form::<Vec<(String, String)>>::from_request(whole, &()).await;
            if !empty {
                fields.extend(form.map_err(|_| bad())?.0.into_iter().map(|(key, value)| (key, value.into_bytes())));
            }
        }
    }
    Ok(Asked { method, path, query, fields, now: seconds_now() })
}

/// The body of a request, whole. What is too large is heard out first, within bounds.
async fn gathered(mut body: Body) -> Result<Vec<u8>, Refused> {
    let (mut bytes, mut heard) = (Vec::new(), 0_usize);
    while let Some(frame) = poll_fn(|cx| Pin::new(&mut body).poll_frame(cx)).await {
        let frame = frame.map_err(|_| refusal(StatusCode::BAD_REQUEST, "asked-form"))?;
        let Ok(data) = frame.into_data() else { continue };
        heard = heard.saturating_add(data.len());
        if heard <= MOST_BYTES {
            bytes.extend_from_slice(&data);
        } else {
            bytes = Vec::new();
        }
        if heard > MOST_HEARD {
            break;
        }
    }
    if heard > MOST_BYTES { Err(refusal(StatusCode::PAYLOAD_TOO_LARGE, "asked-large")) } else { Ok(bytes) }
}

fn written(answered: Answer) -> Response<Body> {
    let status = StatusCode::from_u16(answered.status).unwrap_or(StatusCode::INTERNAL_SERVER_ERROR);
    let mut response = (status, answered.body).into_response();
    let headers = response.headers_mut();
    let mut set = |name: header::HeaderName, value: &str| {
        if let Ok(value) = HeaderValue::from_str(value) {
            headers.insert(name, value);
        }
    };
    set(header::CONTENT_TYPE, answered.kind);
    set(header::CONTENT_SECURITY_POLICY, POLICY);
    set(header::X_CONTENT_TYPE_OPTIONS, "nosniff");
    set(header::REFERRER_POLICY, "same-origin");
    set(header::CACHE_CONTROL, if answered.forever { "private, max-age=31536000, immutable" } else { "no-store" });
    if let Some(to) = &answered.to {
        set(header::LOCATION, to);
    }
    if let Some(file) = &answered.file {
        set(header::CONTENT_DISPOSITION, &format!("attachment; filename=\"{file}\""));
    }
    response
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    fn headers(all: &[(header::HeaderName, &str)]) -> HeaderMap {
        all.iter().map(|(name, value)| (name.clone(), HeaderValue::from_str(value).unwrap())).collect()
    }

    fn status(method: axum::http::Method, all: &[(header::HeaderName, &str)]) -> u16 {
        may_ask(&method, &headers(all), 4000).map_or_else(|refused| refused.status.as_u16(), |()| 200)
    }

    #[test]
    fn only_our_own_name_and_pages_may_ask() {
        use axum::http::Method;
        let host = (header::HOST, "127.0.0.1:4000");
        assert_eq!(status(Method::GET, std::slice::from_ref(&host)), 200);
        assert_eq!(status(Method::GET, &[(header::HOST, "localhost:4000")]), 200);
        for strange in ["evil.example", "127.0.0.1", "127.0.0.1:4001", "127.0.0.1:4000.evil.example", ""] {
            assert_eq!(status(Method::GET, &[(header::HOST, strange)]), 421, "{strange}");
        }
        assert_eq!(status(Method::GET, &[]), 421);
        let from = |origin| status(Method::POST, &[host.clone(), (header::ORIGIN, origin)]);
        assert_eq!(from("http://127.0.0.1:4000"), 200);
        for strange in ["http://evil.example", "null", "https://127.0.0.1:4000", "http://127.0.0.1:4001"] {
            assert_eq!(from(strange), 403, "{strange}");
        }
        assert_eq!(status(Method::POST, std::slice::from_ref(&host)), 403);
        assert_eq!(status(Method::DELETE, std::slice::from_ref(&host)), 405);
    }
}
