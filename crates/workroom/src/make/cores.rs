//! Work of equal parts, shared out among the cores.

use std::thread;

/// What comes of each, every n-th to one core; in no order that means anything.
///
/// A hand that panicked leaves out what it had; the work given here has no reason to.
pub(super) fn shared_out<T: Sync, R: Send>(all: &[T], one: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let cores = thread::available_parallelism().map_or(1, usize::from).min(all.len()).max(1);
    let one = &one;
    thread::scope(|scope| {
        let hands: Vec<_> = (0..cores)
            .map(|core| scope.spawn(move || all.iter().skip(core).step_by(cores).map(one).collect::<Vec<R>>()))
            .collect();
        hands.into_iter().flat_map(|hand| hand.join().unwrap_or_default()).collect()
    })
}

#[cfg(test)]
mod tests {
    use super::shared_out;

    #[test]
    fn everything_is_done_once() {
        for count in [0, 1, 7, 100] {
            let all: Vec<usize> = (0..count).collect();
            let mut done = shared_out(&all, |of| of * 2);
            done.sort_unstable();
            assert_eq!(done, all.iter().map(|of| of * 2).collect::<Vec<usize>>());
        }
    }
}
