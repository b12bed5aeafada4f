//! Writing a folder of results whole or not at all, without touching what the maker put there.
//!
//! Everything is first written into a folder beside the wanted one; only when all of it is there is it moved
//! into place. A list of the files Octavo made (`octavo-files.txt`) lies among them: next time just those
//! are replaced, or removed if they are no longer made. Any other file in the folder is never touched.

use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// One file to write.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OutFile {
    /// Its name in the folder, without any folder of its own.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

impl OutFile {
    /// A file of that name with those bytes.
    pub fn new(name: impl Into<String>, bytes: impl Into<Vec<u8>>) -> OutFile {
        OutFile { name: name.into(), bytes: bytes.into() }
    }
}

/// Why nothing was written.
#[derive(Debug, thiserror::Error)]
pub enum OutputError {
    /// The folder's name is taken by a file.
    #[error("`{0}` is a file")]
    NotAFolder(PathBuf),
    /// A file that Octavo did not make has a name that is needed.
    #[error("`{0}` was not made by Octavo")]
    Theirs(PathBuf),
    /// The disk said no.
    #[error("`{path}`: {error}")]
    Disk {
        /// What was being written or moved.
        path: PathBuf,
        /// Why it failed.
        error: io::Error,
    },
}

/// The list of files that Octavo made.
pub const LIST: &str = "octavo-files.txt";

/// Write all `files` into `folder`, or none.
///
/// # Shape
/// `note` is the first line of the list of files, for a person who opens it. File names must differ.
///
/// # Errors
/// [`OutputError::NotAFolder`] or [`OutputError::Theirs`] where a maker's file is in the way,
/// [`OutputError::Disk`] where the disk refuses; in each case `folder` is as it was.
pub fn write_whole(folder: &Path, note: &str, files: &[OutFile]) -> Result<(), OutputError> {
    if folder.exists() && !folder.is_dir() {
        return Err(OutputError::NotAFolder(folder.to_owned()));
    }
    let ours = listed(folder);
    let wanted: BTreeSet<&str> = files.iter().map(|file| file.name.as_str()).collect();
    for name in &wanted {
        let place = folder.join(name);
        if place.symlink_metadata().is_ok() && !ours.contains(*name) {
            return Err(OutputError::Theirs(place));
        }
    }
    let existed = folder.is_dir();
    let beside = Beside::new(folder)?;
    let mut list = format!("{note}\n");
    for file in files {
        write(&beside.new.join(&file.name), &file.bytes)?;
        list.push_str(&file.name);
        list.push('\n');
    }
    write(&beside.new.join(LIST), list.as_bytes())?;
    if !existed {
        return fs::rename(&beside.new, folder).map_err(disk(folder));
    }
    let gone: Vec<&str> = ours.iter().map(String::as_str).chain([LIST]).collect();
    exchange(folder, &beside, &gone, wanted.iter().copied().chain([LIST]))
}

/// Names in the list that an earlier run left in the folder. Names with a folder in them are not believed.
fn listed(folder: &Path) -> BTreeSet<String> {
    let list = fs::read_to_string(folder.join(LIST)).unwrap_or_default();
    list.lines()
        .skip(1)
        .filter(|name| !name.is_empty() && !name.contains(['/', '\\']) && *name != "." && *name != "..")
        .map(str::to_owned)
        .collect()
}

/// Move the old files out and the new ones in; on any failure move everything back.
fn exchange<'a>(
    folder: &Path,
    beside: &Beside,
    gone: &[&str],
    wanted: impl Iterator<Item = &'a str>,
) -> Result<(), OutputError> {
    let mut moved: Vec<(PathBuf, PathBuf)> = Vec::new();
    let out = gone.iter().map(|name| (folder.join(name), beside.old.join(name))).filter(|(from, _)| from.is_file());
    let into = wanted.map(|name| (beside.new.join(name), folder.join(name)));
    let moves: Vec<_> = out.chain(into).collect();
    for (from, to) in moves {
        if let Err(error) = fs::rename(&from, &to) {
            for (from, to) in moved.iter().rev() {
                // Nothing better can be done if the way back fails too.
                let _ = fs::rename(to, from);
            }
            return Err(OutputError::Disk { path: from, error });
        }
        moved.push((from, to));
    }
    Ok(())
}

fn write(path: &Path, bytes: &[u8]) -> Result<(), OutputError> {
    fs::write(path, bytes).map_err(disk(path))
}

fn disk(path: &Path) -> impl FnOnce(io::Error) -> OutputError + use<> {
    let path = path.to_owned();
    |error| OutputError::Disk { path, error }
}

/// A folder beside the wanted one, on the same disk so that moving is one step; removed when dropped.
struct Beside {
    all: PathBuf,
    new: PathBuf,
    old: PathBuf,
}

impl Beside {
    fn new(folder: &Path) -> Result<Beside, OutputError> {
        // `out/..` or `.` have no name of their own: ask the disk which folder is meant.
        let folder = if folder.is_dir() { folder.canonicalize().map_err(disk(folder))? } else { folder.to_owned() };
        let parent = folder.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
        fs::create_dir_all(parent).map_err(disk(parent))?;
        let name = folder.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let all = parent.join(format!(".{name}.octavo-{}", std::process::id()));
        let beside = Beside { new: all.join("new"), old: all.join("old"), all };
        fs::create_dir_all(&beside.new).map_err(disk(&beside.all))?;
        fs::create_dir_all(&beside.old).map_err(disk(&beside.all))?;
        Ok(beside)
    }
}

impl Drop for Beside {
    fn drop(&mut self) {
        // What cannot be removed does no harm: it is ours and hidden.
        let _ = fs::remove_dir_all(&self.all);
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    fn scratch(name: &str) -> PathBuf {
        let folder = std::env::temp_dir().join(format!("octavo-outputs-{}-{name}", std::process::id()));
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).unwrap();
        folder
    }

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> =
            fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
        names.sort();
        names
    }

    #[test]
    fn a_new_folder_appears_whole_and_nothing_is_left_beside_it() {
        let base = scratch("new");
        write_whole(&base.join("a/b"), "made", &[OutFile::new("x", "1"), OutFile::new("y", "2")]).unwrap();
        assert_eq!(names(&base.join("a/b")), [LIST, "x", "y"]);
        assert_eq!(names(&base.join("a")), ["b"]);
        fs::remove_dir_all(base).unwrap();
    }

    #[test]
    fn made_again_only_our_files_are_replaced() {
        let out = scratch("again").join("out");
        write_whole(&out, "made", &[OutFile::new("x", "1"), OutFile::new("old", "1")]).unwrap();
        fs::write(out.join("letter to the library.txt"), "mine").unwrap();
        write_whole(&out, "made", &[OutFile::new("x", "2"), OutFile::new("z", "2")]).unwrap();
        assert_eq!(names(&out), ["letter to the library.txt", LIST, "x", "z"]);
        assert_eq!(fs::read_to_string(out.join("x")).unwrap(), "2");
        assert_eq!(fs::read_to_string(out.join("letter to the library.txt")).unwrap(), "mine");
        fs::remove_dir_all(out.parent().unwrap()).unwrap();
    }

    #[test]
    fn a_makers_file_in_the_way_is_refused_and_nothing_is_written() {
        let out = scratch("theirs");
        fs::write(out.join("plan.json"), "mine").unwrap();
        let refused = write_whole(&out, "made", &[OutFile::new("a", "1"), OutFile::new("plan.json", "2")]);
        assert!(matches!(refused, Err(OutputError::Theirs(_))), "{refused:?}");
        assert_eq!(names(&out), ["plan.json"]);
        assert_eq!(fs::read_to_string(out.join("plan.json")).unwrap(), "mine");
        fs::remove_dir_all(out).unwrap();
    }

    #[test]
    fn a_failing_move_puts_everything_back() {
        let out = scratch("back").join("out");
        write_whole(&out, "made", &[OutFile::new("x", "1"), OutFile::new("y", "1")]).unwrap();
        let beside = Beside::new(&out).unwrap();
        write(&beside.new.join("x"), b"2").unwrap();
        // `y` was never written into the new folder, so its move fails after `x` went in.
        let failed = exchange(&out, &beside, &["x", "y", LIST], ["x", "y", LIST].into_iter());
        assert!(failed.is_err());
        drop(beside);
        assert_eq!(names(&out), [LIST, "x", "y"]);
        assert_eq!(fs::read_to_string(out.join("x")).unwrap(), "1");
        fs::remove_dir_all(out.parent().unwrap()).unwrap();
    }

    #[test]
    fn a_file_where_the_folder_should_be_is_refused() {
        let base = scratch("file");
        fs::write(base.join("out"), "mine").unwrap();
        let refused = write_whole(&base.join("out"), "made", &[OutFile::new("x", "1")]);
        assert!(matches!(refused, Err(OutputError::NotAFolder(_))), "{refused:?}");
        assert_eq!(fs::read_to_string(base.join("out")).unwrap(), "mine");
        fs::remove_dir_all(base).unwrap();
    }

    #[test]
    fn a_list_that_names_files_elsewhere_is_not_believed() {
        let base = scratch("elsewhere");
        let out = base.join("out");
        fs::create_dir(&out).unwrap();
        fs::write(base.join("precious"), "mine").unwrap();
        fs::write(out.join(LIST), "made\n../precious\n").unwrap();
        write_whole(&out, "made", &[OutFile::new("x", "1")]).unwrap();
        assert_eq!(fs::read_to_string(base.join("precious")).unwrap(), "mine");
        fs::remove_dir_all(base).unwrap();
    }
}
