//! How long a search may go on: counted in nodes, or stopped by the caller. Never by a clock of its own.

use std::fmt;

/// The search must stop now: its nodes are spent or the caller said stop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("the search budget is spent")]
pub struct Exhausted;

/// What a long search tells its caller now and then.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// Nodes spent so far.
    pub nodes: u64,
    /// Best value so far, if any, in the search's own measure.
    pub best: Option<u64>,
    /// Proven bound so far, if any.
    pub bound: Option<u64>,
}

/// Nodes a search may spend, with a stop signal and a progress report.
pub struct Budget<'a> {
    limit: u64,
    spent: u64,
    /// Nodes spent since the last look at the stop signal, and the most there were between two looks.
    since: u64,
    widest: u64,
    stopped: bool,
    stop: Option<&'a dyn Fn() -> bool>,
    progress: Option<&'a dyn Fn(Progress)>,
}

/// How many nodes pass between two looks at the stop signal.
const LOOK_EVERY: u64 = 1 << 10;

impl<'a> Budget<'a> {
    /// At most so many nodes.
    pub fn nodes(limit: u64) -> Budget<'a> {
        Budget { limit, spent: 0, since: 0, widest: 0, stopped: false, stop: None, progress: None }
    }

    /// No limit: for proofs in tests.
    pub fn unlimited() -> Budget<'a> {
        Budget::nodes(u64::MAX)
    }

    /// The same budget, also ended when `stop` says so.
    #[must_use]
    pub fn stopped_by(mut self, stop: &'a dyn Fn() -> bool) -> Budget<'a> {
        self.stop = Some(stop);
        self
    }

    /// The same budget, telling `progress` now and then.
    #[must_use]
    pub fn telling(mut self, progress: &'a dyn Fn(Progress)) -> Budget<'a> {
        self.progress = Some(progress);
        self
    }

    /// Nodes spent so far.
    pub fn spent(&self) -> u64 {
        self.spent
    }

    /// A budget of its own with at most so many of the nodes left, with the same stop signal and report.
    ///
    /// [`Budget::join`] it afterwards.
    #[must_use]
    pub fn part(&self, nodes: u64) -> Budget<'a> {
        Budget {
            limit: nodes.min(self.left()),
            spent: 0,
            since: self.since,
            widest: self.widest,
            stopped: self.stopped,
            stop: self.stop,
            progress: self.progress,
        }
    }

    /// Does something within at most so many of the nodes left, and spends what it took.
    ///
    /// That the part ran out, or that it was stopped, is for the work itself to say.
    pub fn within<T>(&mut self, nodes: u64, work: impl FnOnce(&mut Budget<'a>) -> T) -> T {
        let mut part = self.part(nodes);
        let done = work(&mut part);
        let _ = self.join(&part);
        done
    }

    /// Spend what a part spent; it has looked at the stop signal on its own.
    ///
    /// # Errors
    /// [`Exhausted`] once the nodes are gone or the caller said stop.
    pub fn join(&mut self, part: &Budget<'_>) -> Result<(), Exhausted> {
        self.spent = self.spent.saturating_add(part.spent);
        (self.since, self.widest) = (part.since, self.widest.max(part.widest));
        self.stopped |= part.stopped;
        if self.spent > self.limit || self.stopped { Err(Exhausted) } else { Ok(()) }
    }

    /// The most nodes that were spent between two looks at the stop signal.
    pub fn widest(&self) -> u64 {
        self.widest.max(self.since)
    }

    /// True once the caller has said stop.
    pub fn stopped(&self) -> bool {
        self.stopped
    }

    /// Nodes left.
    pub fn left(&self) -> u64 {
        self.limit - self.spent.min(self.limit)
    }

    /// Spend so many nodes.
    ///
    /// # Errors
    /// [`Exhausted`] once the nodes are gone or the caller said stop.
    #[inline]
    pub fn spend(&mut self, nodes: u64) -> Result<(), Exhausted> {
        self.spent = self.spent.saturating_add(nodes);
        self.since = self.since.saturating_add(nodes);
        if self.spent > self.limit || self.stopped {
            return Err(Exhausted);
        }
        if self.since >= LOOK_EVERY {
            (self.since, self.widest) = (0, self.widest.max(self.since));
            if self.stop.is_some_and(|stop| stop()) {
                self.stopped = true;
                return Err(Exhausted);
            }
        }
        Ok(())
    }

    /// Tell the caller how far the search is.
    pub fn tell(&self, best: Option<u64>, bound: Option<u64>) {
        if let Some(progress) = self.progress {
            progress(Progress { nodes: self.spent, best, bound });
        }
    }
}

impl fmt::Debug for Budget<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Budget").field("limit", &self.limit).field("spent", &self.spent).finish_non_exhaustive()
    }
}
