//! `octavo` alone: opens the workroom in the browser.

use std::path::PathBuf;
use std::process::{Command, Stdio};

use store::projects::{OpenError, StoreError};
use words::{Arg, say};

use super::clock::seconds_now;
use super::{Desk, Done, Refusal};
use crate::web::{Address, Limits, Room, ServeError, serve};

/// The port that is tried first, so that the address stays the same. Chosen: above the reserved ones, given to
/// nothing common.
const PORT: u16 = 48_230;

/// `octavo`, with its options.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct OpenRequest {
    /// The port that was asked for; `None`: the usual one, or any.
    pub(super) port: Option<u16>,
    /// Where the projects are kept; `None`: the usual place.
    pub(super) data: Option<PathBuf>,
    /// True: also ask the browser to open the address.
    pub(super) browser: bool,
}

/// Opens the workroom and serves it until it is stopped.
pub(super) fn run(request: &OpenRequest, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let file = match &request.data {
        Some(file) => file.clone(),
        None => usual_place().ok_or_else(|| Refusal::said("refused-no-home", &[]))?,
    };
    if let Some(folder) = file.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        std::fs::create_dir_all(folder).map_err(|error| refused(&file, OpenError::Store(error.into())))?;
    }
    let room = Room::open(&file, seconds_now()).map_err(|error| refused(&file, error))?;
    let port = request.port.unwrap_or_else(|| if free(PORT) { PORT } else { 0 });
    let out = &mut *desk.out;
    let served = serve(room, Address { port }, Limits::default(), |address| {
        // Nobody may be reading: the pages are there all the same.
        let _ = writeln!(out, "{}", say("opened", &[("address", address.into())]));
        let _ = out.flush();
        if request.browser {
            show(address);
        }
    });
    match served {
        Ok(()) => Ok(Done::Well),
        Err(ServeError::Port(error)) => {
            let facts = [("port", Arg::from(u32::from(port))), ("reason", error.to_string().into())];
            Err(Refusal::said("refused-port", &facts))
        }
        Err(ServeError::Stopped(error)) => Err(error.into()),
    }
}

fn free(port: u16) -> bool {
    std::net::TcpListener::bind((std::net::Ipv4Addr::LOCALHOST, port)).is_ok()
}

fn usual_place() -> Option<PathBuf> {
    Some(std::env::home_dir()?.join(".local").join("share").join("octavo").join("octavo.db"))
}

/// Asks the desktop to open the address; where there is none, the printed address does.
fn show(address: &str) {
    let opener = if cfg!(target_os = "macos") {
        "open"
    } else if cfg!(target_os = "windows") {
        "explorer"
    } else {
        "xdg-open"
    };
    let _ = Command::new(opener).arg(address).stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null()).spawn();
}

fn refused(file: &std::path::Path, error: OpenError) -> Refusal {
    let path = ("path", Arg::Text(file.display().to_string()));
    match error {
        OpenError::NotADatabase => Refusal::said("refused-store-not-ours", &[path]),
        OpenError::Theirs => Refusal::said("refused-store-theirs", &[path]),
        OpenError::Newer { .. } => Refusal::said("refused-store-newer", &[path]),
        OpenError::Store(StoreError::InUse) => Refusal::said("refused-store-in-use", &[path]),
        OpenError::Store(StoreError::ReadOnly) => Refusal::said("refused-store-read-only", &[path]),
        OpenError::Store(StoreError::Full) => Refusal::said("refused-store-full", &[path]),
        OpenError::Store(error) => Refusal::said("refused-store", &[path, ("reason", error.to_string().into())]),
    }
}
