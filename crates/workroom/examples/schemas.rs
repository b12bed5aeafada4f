//! Writes `docs/schema/*.json` anew from the types: `cargo schemas`. A test holds files and types together.

use std::error::Error;
use std::fs;
use std::path::Path;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/schema");
    fs::create_dir_all(&folder)?;
    for (name, text) in workroom::make::schemas() {
        fs::write(folder.join(name), text)?;
    }
    Ok(())
}
