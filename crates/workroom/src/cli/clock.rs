//! The only clock of the house: it stops a long search and tells how it goes. Answers never depend on it
//! unless the person asked for `--seconds`.

use std::cell::RefCell;
use std::io::Write;
use std::time::{Duration, Instant};

use cutting::Progress;
use words::say;

/// Nothing is said about work that takes no longer than this.
const PATIENCE: Duration = Duration::from_millis(500);

/// Seconds since 1970, for what is kept.
#[allow(clippy::disallowed_methods, reason = "the rim's one clock")]
pub(crate) fn seconds_now() -> i64 {
    let since = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH).unwrap_or_default();
    i64::try_from(since.as_secs()).unwrap_or(i64::MAX)
}

/// How long something took, and whether it must stop.
#[derive(Debug)]
pub(crate) struct Clock {
    started: Instant,
    limit: Option<Duration>,
}

impl Clock {
    /// Start now; stop after so many seconds.
    #[allow(clippy::disallowed_methods, reason = "the rim's one clock")]
    pub(crate) fn start(limit_seconds: Option<f64>) -> Clock {
        let limit = limit_seconds.and_then(|seconds| Duration::try_from_secs_f64(seconds).ok());
        Clock { started: Instant::now(), limit }
    }

    /// True once the limit has passed.
    pub(crate) fn over(&self) -> bool {
        self.limit.is_some_and(|limit| self.started.elapsed() >= limit)
    }

    /// Seconds since the start.
    pub(crate) fn seconds(&self) -> f64 {
        self.started.elapsed().as_secs_f64()
    }
}

/// Tells the progress of long work, one line at a time.
pub(crate) struct Teller<'a, 'b> {
    clock: &'a Clock,
    err: RefCell<&'a mut (dyn Write + 'b)>,
    next: RefCell<Duration>,
}

impl<'a, 'b> Teller<'a, 'b> {
    /// A teller that speaks on `err` once the clock has run for a while.
    pub(crate) fn new(clock: &'a Clock, err: &'a mut (dyn Write + 'b)) -> Teller<'a, 'b> {
        Teller { clock, err: RefCell::new(err), next: RefCell::new(PATIENCE) }
    }

    /// Tell how far a search is, if it is time to.
    pub(crate) fn tell(&self, progress: Progress) {
        let elapsed = self.clock.started.elapsed();
        let mut next = self.next.borrow_mut();
        if elapsed < *next {
            return;
        }
        // Less and less often: a line after 0.5 s, 1 s, 2 s, 4 s, …
        *next = (elapsed * 2).min(elapsed + Duration::from_secs(10));
        let number = |value: Option<u64>| value.map_or_else(|| "–".to_owned(), |value| value.to_string());
        let line = say(
            "progress-search",
            &[
                ("seconds", format!("{:.1}", elapsed.as_secs_f64()).into()),
                ("nodes", progress.nodes.into()),
                ("best", number(progress.best).into()),
                ("bound", number(progress.bound).into()),
            ],
        );
        let _ = writeln!(self.err.borrow_mut(), "{line}");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SOME: Progress = Progress { nodes: 7, best: Some(3), bound: None };

    #[test]
    fn quick_work_says_nothing() {
        let clock = Clock::start(None);
        let mut said = Vec::new();
        Teller::new(&clock, &mut said).tell(SOME);
        assert!(said.is_empty());
    }

    #[test]
    fn long_work_is_told_once_and_then_less_often() {
        let clock = Clock {
            #[allow(clippy::disallowed_methods, reason = "the test needs a clock that has run a while")]
            started: Instant::now().checked_sub(Duration::from_secs(3)).unwrap_or_else(Instant::now),
            limit: None,
        };
        let mut said = Vec::new();
        let teller = Teller::new(&clock, &mut said);
        teller.tell(SOME);
        teller.tell(SOME);
        let _ = teller;
        let said = String::from_utf8_lossy(&said).into_owned();
        assert_eq!(said.lines().count(), 1, "{said}");
        assert!(said.contains('7') && said.contains('3'), "{said}");
    }

    #[test]
    fn no_limit_is_never_over_and_a_zero_limit_always() {
        assert!(!Clock::start(None).over());
        assert!(Clock::start(Some(0.0)).over());
        assert!(!Clock::start(Some(1000.0)).over());
    }
}
