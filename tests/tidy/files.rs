//! The project's own text files, read once per test.

use std::fs;
use std::path::{Path, PathBuf};

/// Names below which nothing is ours.
const FOREIGN: [&str; 6] = [".git", "target", "dist", ".tools", "node_modules", "out"];

/// Endings of files that are text.
const TEXT: [&str; 13] =
    ["rs", "md", "toml", "js", "mjs", "css", "html", "json", "csv", "py", "svg", "webmanifest", ""];

/// A text file of the project.
pub struct Text {
    /// Path from the project's root, with `/`.
    pub path: String,
    /// What it says.
    pub body: String,
}

impl Text {
    /// Ending of its name, empty for none.
    pub fn ending(&self) -> &str {
        ending(Path::new(&self.path))
    }

    /// Every line that `finds` something in, as "path:line: text".
    pub fn lines_where(&self, finds: impl Fn(&str) -> bool) -> Vec<String> {
        let found = self.body.lines().enumerate().filter(|(_, line)| finds(line));
        found.map(|(index, line)| format!("{}:{}: {}", self.path, index + 1, line.trim())).collect()
    }
}

/// All text files below `folder` ("" for everything), in the order of their names.
pub fn texts(folder: &str) -> Vec<Text> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut paths = Vec::new();
    walk(&root.join(folder), &mut paths);
    paths.sort();
    let read = |path: PathBuf| {
        let body = fs::read_to_string(&path).ok()?;
        let path =
            path.strip_prefix(root).expect("walked from the root").to_string_lossy().replace('\\', "/");
        Some(Text { path, body })
    };
    paths.into_iter().filter_map(read).collect()
}

/// Fails with the findings, one a line.
pub fn assert_none(findings: &[String], rule: &str) {
    assert!(findings.is_empty(), "{rule}:\n{}", findings.join("\n"));
}

fn walk(folder: &Path, paths: &mut Vec<PathBuf>) {
    let Ok(entries) = fs::read_dir(folder) else { return };
    for path in entries.flatten().map(|entry| entry.path()) {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        if FOREIGN.contains(&name.as_ref()) {
            continue;
        }
        if path.is_dir() {
            walk(&path, paths);
        } else if path.is_file() && TEXT.contains(&ending(&path)) {
            paths.push(path);
        }
    }
}

fn ending(path: &Path) -> &str {
    path.extension().and_then(|ending| ending.to_str()).unwrap_or("")
}
