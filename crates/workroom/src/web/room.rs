//! The projects, plans already made, drawings already drawn.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, OnceLock, PoisonError};
use std::thread;
use std::time::Duration;

use cards::model::Side;
use cards::plan::{PrintMaps, plan_on};
use cards::{Plan, Project};
use cutting::{Budget, Progress};
use drawing::sheets::{Colors, Faces};
use store::projects::{OpenError, ProjectId, Projects, StoreError};

use super::Answer;
use super::prints::{self, Given, Prints};
use crate::cli::{Clock, NODES};
use crate::colors::{OfPrint, Seen, for_pages, of_prints};
use crate::make::faces::{FaceId, faces_by};
use crate::make::interest;

/// Chosen: a page that takes longer than this to come looks broken.
const PATIENCE: Duration = Duration::from_millis(1500);
/// Most plans kept at once. Chosen: a few projects and a few undone steps each; some 30 MB of prints apiece.
const MOST_PLANS: usize = 6;
/// Most bytes of drawings kept.
const MOST_DRAWN: usize = 48 << 20;

/// Plans a project on its prints; [`cards::plan::plan_on`] but in tests that need a slow one, or a broken one.
pub type Planner = fn(&Project, &PrintMaps, &mut Budget<'_>) -> Plan;

/// Everything behind the pages.
#[derive(Debug)]
pub struct Room {
    store: Mutex<Projects>,
    /// Where scratch files may lie: beside the store.
    beside: PathBuf,
    plans: Mutex<Vec<(String, Arc<Job>)>>,
    drawn: Mutex<Drawn>,
    prints: Arc<Prints>,
    planner: Planner,
    /// Projects of which something was ticked before their plan was there: their shelf is not up to date.
    owing: Mutex<BTreeSet<ProjectId>>,
    /// The text of each project for whose plan the shelf was laid aside last.
    aside: Mutex<BTreeMap<ProjectId, String>>,
    /// A backup that was sent, until it is said whether it is wanted.
    offered: Mutex<Option<(String, Vec<u8>)>>,
    /// How long a page waits for a plan before it says that it is being made.
    pub(super) patience: Duration,
}

#[derive(Debug, Default)]
struct Drawn {
    bytes: usize,
    answers: BTreeMap<String, Answer>,
}

/// A project's text with everything that was worked out from it.
#[derive(Debug)]
pub(super) struct Made {
    pub(super) plan: Plan,
    pub(super) faces: Faces,
    both: OnceLock<Faces>,
    colors: OnceLock<Vec<OfPrint>>,
    page_colors: OnceLock<Colors>,
    /// Picture files that could not be had: their faces are plain.
    pub(super) missing: Vec<String>,
    prints: Arc<Prints>,
    given: Given,
}

impl Made {
    pub(super) fn project(&self) -> &Project {
        &self.plan.project
    }

    /// The faces with the other side of every sheet too; made when they are first asked for.
    pub(super) fn both_faces(&self) -> &Faces {
        self.both.get_or_init(|| {
            let sides = self.faces.keys().flat_map(|id| [(id.0, id.1, Side::Front), (id.0, id.1, Side::Back)]);
            sides.filter_map(|id| Some((id, self.face(id)?))).collect()
        })
    }

    /// The colours of every print that shows; found when they are first asked for.
    pub(super) fn colors(&self) -> &[OfPrint] {
        self.colors.get_or_init(|| of_prints(&self.faces, &|picture| self.prints.seen(picture)))
    }

    /// The same for the handout.
    pub(super) fn page_colors(&self) -> &Colors {
        self.page_colors.get_or_init(|| for_pages(&self.plan, &self.faces, self.colors()))
    }

    /// The colours of one face of any design.
    pub(super) fn seen(&self, id: FaceId) -> Option<Arc<Seen>> {
        Some(self.prints.seen(&self.face(id)?))
    }

    /// One face of any design.
    pub(super) fn face(&self, id: FaceId) -> Option<drawing::Picture> {
        if let Some(known) = self.faces.get(&id) {
            return Some(known.clone());
        }
        let pack = self.plan.project.packs.get(id.0)?;
        let design = pack.designs.get(id.1)?;
        let face = design.face(id.2);
        self.prints.face(&self.plan, &face.look, pack.sheet, &self.given)
    }
}

/// What came of planning.
#[derive(Debug)]
enum Planned {
    Made(Arc<Made>),
    /// Nothing: it panicked, or no thread could be had for it.
    Broken,
}

/// A plan that is being made, or is there.
#[derive(Debug)]
pub(super) struct Job {
    clock: Clock,
    stop: AtomicBool,
    nodes: AtomicU64,
    done: Mutex<Option<Planned>>,
    ready: Condvar,
}

impl Job {
    /// Stop with what is there.
    pub(super) fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    fn begun() -> Job {
        Job {
            clock: Clock::start(None),
            stop: AtomicBool::default(),
            nodes: AtomicU64::default(),
            done: Mutex::default(),
            ready: Condvar::new(),
        }
    }

    /// Seconds since it was begun, and nodes of the search so far.
    pub(super) fn so_far(&self) -> (f64, u64) {
        (self.clock.seconds(), self.nodes.load(Ordering::Relaxed))
    }

    /// What was made, if it is there in time.
    pub(super) fn wait(&self, most: Duration) -> Option<Arc<Made>> {
        let done = locked(&self.done);
        let (done, _) =
            self.ready.wait_timeout_while(done, most, |done| done.is_none()).unwrap_or_else(PoisonError::into_inner);
        match &*done {
            Some(Planned::Made(made)) => Some(Arc::clone(made)),
            Some(Planned::Broken) | None => None,
        }
    }

    /// True if nothing will come of it any more.
    pub(super) fn broken(&self) -> bool {
        matches!(&*locked(&self.done), Some(Planned::Broken))
    }

    /// What is said first holds.
    fn finish(&self, planned: Planned) {
        locked(&self.done).get_or_insert(planned);
        self.ready.notify_all();
    }

    fn make(&self, planner: Planner, project: &Project, prints: Arc<Prints>, given: Given) {
        let _at_last = BrokenUnlessMade(self);
        let stop = || self.stop.load(Ordering::Relaxed);
        let progress = |progress: Progress| self.nodes.store(progress.nodes, Ordering::Relaxed);
        let mut budget = Budget::nodes(NODES).stopped_by(&stop).telling(&progress);
        let traced = crate::backgrounds::traced(project, &|name| given.get(name).cloned());
        let mark = project.mark.step();
        let maps = interest::maps(project, &|_, look, size| prints.map(look, size, mark, &given));
        let plan = planner(&traced, &maps, &mut budget);
        // A picture that was not given here has a plain face until it is.
        let missing = prints::names(project).into_iter().filter(|name| !given.contains_key(*name));
        let missing: BTreeSet<String> = missing.map(str::to_owned).collect();
        let faces = faces_by(&plan, &|plan, look, size| prints.face(plan, look, size, &given));
        let missing = missing.into_iter().collect();
        self.finish(Planned::Made(Arc::new(Made {
            plan,
            faces,
            both: OnceLock::new(),
            colors: OnceLock::new(),
            page_colors: OnceLock::new(),
            missing,
            prints,
            given,
        })));
    }
}

/// Whoever waits for a job is told when its thread is gone, also where a panic ended it.
struct BrokenUnlessMade<'a>(&'a Job);

impl Drop for BrokenUnlessMade<'_> {
    fn drop(&mut self) {
        self.0.finish(Planned::Broken);
    }
}

impl Room {
    /// Opens the room over a file of projects; begins with the demo where there is none: the whole
    /// pack on top, one sheet of each design below.
    ///
    /// # Errors
    /// [`OpenError`] as the store tells it.
    pub fn open(file: &Path, now: i64) -> Result<Room, OpenError> {
        let beside = file.parent().map_or_else(PathBuf::new, Path::to_owned);
        Room::over(Projects::open(file)?, beside, now, PATIENCE)
    }

    /// A room that forgets everything when it closes: for tests.
    ///
    /// # Errors
    /// [`OpenError`] as the store tells it.
    pub fn in_memory(now: i64) -> Result<Room, OpenError> {
        Room::over(Projects::in_memory()?, std::env::temp_dir(), now, Duration::from_secs(60))
    }

    fn over(mut store: Projects, beside: PathBuf, now: i64, patience: Duration) -> Result<Room, OpenError> {
        if store.all().map_err(OpenError::Store)?.is_empty() {
            let what = super::say("edit-demo", &[]);
            // The last one laid down lies on top: the whole pack.
            for text in [crate::make::ONE_EACH, crate::make::DEMO] {
                store.add(text, &what, now).map_err(OpenError::Store)?;
            }
        }
        Ok(Room {
            store: Mutex::new(store),
            beside,
            plans: Mutex::default(),
            drawn: Mutex::default(),
            prints: Arc::default(),
            planner: plan_on,
            owing: Mutex::default(),
            aside: Mutex::default(),
            offered: Mutex::default(),
            patience,
        })
    }

    /// The same room, with another way of planning and of waiting for it: for tests and trials.
    #[must_use]
    pub fn planned_by(mut self, planner: Planner, patience: Duration) -> Room {
        (self.planner, self.patience) = (planner, patience);
        self
    }

    /// The projects, for one call or a few.
    pub(super) fn store(&self) -> MutexGuard<'_, Projects> {
        locked(&self.store)
    }

    /// A file name beside the store that is free, and given only once.
    pub(super) fn scratch(&self, now: i64) -> PathBuf {
        static GIVEN: AtomicU64 = AtomicU64::new(0);
        let number = GIVEN.fetch_add(1, Ordering::Relaxed);
        self.beside.join(format!("octavo-scratch-{}-{now}-{number}.db", std::process::id()))
    }

    /// Keeps everything as it is now in a file beside the store, before something replaces it.
    pub(super) fn keep_aside(&self, now: i64) -> Result<(PathBuf, String), StoreError> {
        // What was kept aside before is never written over, not even within one second.
        let marks = std::iter::once(now.to_string()).chain((2..).map(|again: u32| format!("{now}-{again}")));
        let mut found = marks.map(|mark| (self.beside.join(format!("octavo-before-{mark}.db")), mark));
        let (path, mark) = found.find(|(path, _)| !path.exists()).unwrap_or_default();
        self.store().backup(&path)?;
        Ok((path, mark))
    }

    /// The file that was kept aside under a mark, if there is one. A mark is digits, perhaps a dash and more digits, so
    /// that it names no other file.
    pub(super) fn aside_path(&self, mark: &str) -> Option<PathBuf> {
        let digits = |part: &str| !part.is_empty() && part.len() < 20 && part.bytes().all(|sign| sign.is_ascii_digit());
        let (first, again) = mark.split_once('-').unwrap_or((mark, "2"));
        if !digits(first) || !digits(again) {
            return None;
        }
        let path = self.beside.join(format!("octavo-before-{mark}.db"));
        path.is_file().then_some(path)
    }

    /// What was kept aside under a mark.
    pub(super) fn kept_aside(&self, mark: &str) -> Result<Option<Vec<u8>>, StoreError> {
        Ok(self.aside_path(mark).map(std::fs::read).transpose()?)
    }

    /// Holds a backup until its maker has said whether it is wanted; only the last one. Returns its mark.
    pub(super) fn offer(&self, now: i64, bytes: Vec<u8>) -> String {
        static GIVEN: AtomicU64 = AtomicU64::new(0);
        let mark = format!("{now}-{}", GIVEN.fetch_add(1, Ordering::Relaxed));
        *locked(&self.offered) = Some((mark.clone(), bytes));
        mark
    }

    /// The backup that is held under a mark; it is held no longer.
    pub(super) fn take_offered(&self, mark: &str) -> Option<Vec<u8>> {
        locked(&self.offered).take_if(|(held, _)| held == mark).map(|(_, bytes)| bytes)
    }

    /// The plan of a project file that can be read, begun at once if there is none yet.
    pub(super) fn job(&self, text: &str, project: &Project) -> Arc<Job> {
        let mut plans = locked(&self.plans);
        if let Some(at) = plans.iter().position(|(of, _)| of == text) {
            let found = plans.remove(at);
            let job = Arc::clone(&found.1);
            plans.push(found);
            return job;
        }
        let job = Arc::new(Job::begun());
        plans.push((text.to_owned(), Arc::clone(&job)));
        if plans.len() > MOST_PLANS {
            plans.remove(0).1.stop();
        }
        drop(plans);
        let given = self.given(project);
        let (hand, project, prints) = (Arc::clone(&job), project.clone(), Arc::clone(&self.prints));
        let planner = self.planner;
        let begun = thread::Builder::new().spawn(move || hand.make(planner, &project, prints, given));
        if begun.is_err() {
            job.finish(Planned::Broken);
        }
        job
    }

    /// Forgets a plan that nothing came of, so that it is tried once more.
    pub(super) fn try_again(&self, text: &str) {
        locked(&self.plans).retain(|(of, job)| of != text || !job.broken());
    }

    /// The shelf has to hear of the ticks of a project as soon as its plan is there. Where Octavo ends before, it
    /// hears of them with the project's next tick.
    pub(super) fn owe(&self, project: ProjectId) {
        locked(&self.owing).insert(project);
    }

    /// Whether the shelf has yet to hear of the ticks of a project; asked once.
    pub(super) fn owed(&self, project: ProjectId) -> bool {
        locked(&self.owing).remove(&project)
    }

    /// Whether the shelf has yet to be laid aside for a project as it is; asked once.
    pub(super) fn lays_aside(&self, project: ProjectId, text: &str) -> bool {
        locked(&self.aside).insert(project, text.to_owned()).is_none_or(|before| before != text)
    }

    /// The shelf, or what is used of it, changed: every project lays aside anew.
    pub(super) fn shelf_changed(&self) {
        locked(&self.aside).clear();
    }

    /// The plan of a project file, if it is there already.
    pub(super) fn at_hand(&self, text: &str) -> Option<Arc<Made>> {
        let plans = locked(&self.plans);
        let (_, job) = plans.iter().find(|(of, _)| of == text)?;
        job.wait(Duration::ZERO)
    }

    /// The pictures of a project that were given here.
    fn given(&self, project: &Project) -> Given {
        let bytes = |name: &str| self.store().picture_of_hash(prints::hash(name)?).ok().flatten();
        let all = prints::names(project).into_iter();
        all.filter_map(|name| Some((name.to_owned(), Arc::new(bytes(name)?)))).collect()
    }

    /// A drawing by its address and the language spoken, drawn if it is not there yet.
    pub(super) fn drawn(&self, address: &str, draw: impl FnOnce() -> Option<Answer>) -> Option<Answer> {
        let address = format!("{} {address}", words::spoken().tag());
        if let Some(known) = locked(&self.drawn).answers.get(&address) {
            return Some(known.clone());
        }
        let fresh = draw()?;
        let mut drawn = locked(&self.drawn);
        if drawn.bytes + fresh.body.len() > MOST_DRAWN {
            *drawn = Drawn::default();
        }
        drawn.bytes += fresh.body.len();
        drawn.answers.insert(address, fresh.clone());
        Some(fresh)
    }

    /// A text by its address, made if it is not there yet.
    pub(super) fn text(&self, address: &str, make: impl FnOnce() -> Option<String>) -> Option<String> {
        let found = self.drawn(address, || Some(Answer::kept("text/plain", make()?.into_bytes())))?;
        String::from_utf8(found.body).ok()
    }

    /// Forgets drawings: after a restore an address may mean something else.
    pub(super) fn forget(&self) {
        *locked(&self.drawn) = Drawn::default();
        locked(&self.owing).clear();
        self.shelf_changed();
    }
}

/// What a thread that panicked left behind is still whole: every change is one assignment.
pub(super) fn locked<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}
