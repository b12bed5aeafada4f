//! A folder of its own for each test, gone afterwards.

use std::path::PathBuf;

/// A folder that is gone when it goes.
pub(crate) struct Folder(pub(crate) PathBuf);

impl Folder {
    /// Empty; `name` is used once in a file of tests.
    pub(crate) fn new(name: &str) -> Folder {
        let path = std::env::temp_dir().join(format!("octavo-test-{name}-{}", std::process::id()));
        let _ = std::fs::remove_dir_all(&path);
        std::fs::create_dir_all(&path).unwrap();
        Folder(path)
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}
