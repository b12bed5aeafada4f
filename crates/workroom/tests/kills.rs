//! A workroom that is killed while two makers work in it loses nothing that it has answered.
//!
//! Two makers send edits and ticks over HTTP, a project each, as fast as they are answered; the server is killed
//! (`SIGKILL`) at some moment, its file is looked into, and it is begun anew over it. Counted are answers after which
//! the revision or the tick is not there. `OCTAVO_KILL_EDITS=1000 cargo test -p workroom --test kills -- --nocapture`
//! does a thousand edits; left out, fifty. What a kill cannot show is a power cut: the system still writes what a dead
//! program handed to it.
#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "a test that tells what it counted")]
#![allow(clippy::disallowed_methods, reason = "it kills at some moment of the clock, and is told its number of edits")]

use std::path::Path;
use std::thread;
use std::time::Duration;

use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use store::projects::{ProjectId, Projects};

#[path = "common/folder.rs"]
mod folder;
#[path = "common/served.rs"]
mod served;

use folder::Folder;
use served::{Line, Served};

/// One project, and everything that was answered about it.
struct Maker {
    project: i64,
    /// The revision it stands at, as far as its maker knows.
    seen: i64,
    /// Revisions that were answered, with the name that each gave.
    edits: Vec<(i64, String)>,
    ticks: Vec<String>,
    /// Answers that were neither kept nor cut off.
    strange: Vec<String>,
    /// Requests that the kill cut off.
    cut_off: u32,
}

impl Maker {
    fn of(project: i64) -> Maker {
        Maker { project, seen: 1, edits: Vec::new(), ticks: Vec::new(), strange: Vec::new(), cut_off: 0 }
    }

    /// Works until nobody answers any more.
    fn work(&mut self, line: Line) {
        loop {
            let name = format!("Edit {} of project {}", self.seen + 1, self.project);
            let fields = [("seen", &*self.seen.to_string()), ("page", "cards"), ("set:name", &*name)];
            match line.post(&format!("/w/{}/edit", self.project), &fields) {
                (303, _) => {
                    self.seen += 1;
                    self.edits.push((self.seen, name));
                }
                (0, _) => break self.cut_off += 1,
                (_, back) => break self.strange.push(back),
            }
            if self.seen % 4 == 0 {
                let step = format!("step-{}", self.seen);
                match line.post(&format!("/w/{}/tick", self.project), &[("step", &*step), ("done", "yes")]) {
                    (303, _) => self.ticks.push(step),
                    (0, _) => break self.cut_off += 1,
                    (_, back) => break self.strange.push(back),
                }
            }
        }
    }

    /// How many answers are not borne out by the file; from here on its revision is known again.
    fn lost(&mut self, store: &Projects) -> usize {
        let id = ProjectId(self.project);
        let there = |number: i64, name: &str| {
            store.revision(id, number).unwrap().is_some_and(|revision| revision.text.contains(&format!("\"{name}\"")))
        };
        let edits = self.edits.iter().filter(|(number, name)| !there(*number, name)).count();
        let ticked = store.ticks(id).unwrap();
        let ticks = self.ticks.iter().filter(|step| !ticked.contains(*step)).count();
        self.seen = store.get(id).unwrap().unwrap().now.number;
        assert_eq!(store.history(id, u32::MAX).unwrap().len(), usize::try_from(self.seen).unwrap());
        edits + ticks
    }
}

fn looked_into(data: &Path, makers: &mut [Maker; 2]) -> usize {
    let store = Projects::open(data).unwrap();
    makers.iter_mut().map(|maker| maker.lost(&store)).sum()
}

#[test]
fn answered_edits_over_http_survive_kills() {
    let wanted = std::env::var("OCTAVO_KILL_EDITS").ok().and_then(|text| text.parse().ok()).unwrap_or(50);
    let folder = Folder::new("kills");
    let data = folder.0.join("octavo.db");
    let mut makers = [Maker::of(1), Maker::of(2)];
    let mut chance = ChaCha8Rng::seed_from_u64(9);
    let (mut kills, mut lost) = (0_u32, 0);
    while makers.iter().map(|maker| maker.edits.len()).sum::<usize>() < wanted {
        let mut served = Served::over(&data);
        let line = served.line();
        thread::scope(|scope| {
            for maker in &mut makers {
                scope.spawn(|| maker.work(line));
            }
            // From before the first answer to a good many of them.
            thread::sleep(Duration::from_micros(chance.random_range(0..150_000)));
            served.kill();
        });
        kills += 1;
        lost += looked_into(&data, &mut makers);
        assert!(kills < 100 || makers.iter().any(|maker| !maker.edits.is_empty()), "nothing is ever answered");
    }
    let count = |of: fn(&Maker) -> usize| makers.iter().map(of).sum::<usize>();
    let (edits, ticks) = (count(|maker| maker.edits.len()), count(|maker| maker.ticks.len()));
    let (strange, cut_off) = (count(|maker| maker.strange.len()), count(|maker| maker.cut_off as usize));
    println!(
        "{edits} answered edits, {ticks} answered ticks, {kills} kills, {cut_off} requests cut off, {lost} answers lost"
    );
    assert_eq!(lost, 0);
    assert_eq!(strange, 0, "{:?}", makers.iter().flat_map(|maker| &maker.strange).next());
    assert!(kills > 1 && cut_off > 0);
    // And the pages show it.
    let served = Served::over(&data);
    let (status, page) = served.line().page("/w/1/cards");
    assert!(status == 200 && page.contains(&format!("Edit {} of project 1", makers[0].seen)), "{status}");
}
