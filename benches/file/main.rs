//! A hundred thousand damaged files, positions, skylines and links each: none may panic, hang or come out unsound.
//!
//! `cargo bench --bench file` prints how many files reached the mending of parts (the bar is 40 %), how many were
//! repaired, and the slowest of each kind. `FILES` in the environment sets how many. The random numbers are those of
//! SplitMix64 (Steele, Lea and Flood 2014, figure 9) from a printed seed.
#![allow(clippy::print_stdout, reason = "a bench talks")]
#![allow(clippy::unwrap_used, reason = "a bench may stop at the first surprise")]

#[path = "../../tests/project/mutations.rs"]
mod mutations;

use std::time::{Duration, Instant};

use mutations::{spoil_bytes, spoil_tree};
use slantlight::place::coordinates;
use slantlight::place::skyline::Skyline;
use slantlight::project::restore::restore;
use slantlight::project::{canonical, demo, link};

const SEED: u64 = 20_270_311;

/// Least share of the files that must reach the mending of parts.
const LEAST_SHARE: f64 = 0.4;

/// Longest that one input may take. Our own choice: far above what any takes, far below what anybody calls a hang.
const PATIENCE: Duration = Duration::from_secs(2);

fn main() {
    let files = std::env::var("FILES").ok().and_then(|text| text.parse().ok()).unwrap_or(100_000);
    let mut random = Random(SEED);
    println!("{files} of each, seed {SEED}");
    restored(files, &mut random);
    let position = "40°38′25.8″N 8°39′13.68″W, second floor; geo:40.6405,-8.6538 8CGRJ8RW+6F";
    texts("positions", position, files, &mut random, |text| coordinates::parse(text).is_ok());
    let skyline = "bearing\theight\n0\t2.5\n90\t10\n181,5;3\n270 0.5\n359.9\t2";
    texts("skylines", skyline, files, &mut random, |text| Skyline::from_columns(text).is_ok());
    let part = link::excerpt(&demo::project(), &demo::project().scenes[3].set_ups[0].id).unwrap();
    let payload = link::payload(&canonical::to_line(&part), None).unwrap();
    let address = format!("Look: https://example.org/#{}{payload} at eight", link::MARK);
    texts("links", &address, files, &mut random, |text| {
        link::find(text)
            .and_then(|found| link::unpack(found).ok())
            .is_some_and(|it| it.open(&it.bytes).is_ok())
    });
}

/// Damaged files: half of them on the bytes, half on the parsed tree.
fn restored(files: u32, random: &mut Random) {
    let text = canonical::to_line(&demo::project());
    let tree = serde_json::from_str(&text).unwrap();
    let (mut reached, mut repaired, mut slowest) = (0u32, 0u32, Duration::ZERO);
    for turn in 0..files {
        let mutations = random.mutations();
        let bytes =
            if turn % 2 == 0 { spoil_tree(&tree, &mutations) } else { spoil_bytes(&text, &mutations) };
        let begin = Instant::now();
        let outcome = restore(&bytes);
        slowest = slowest.max(begin.elapsed());
        let Ok(outcome) = outcome else { continue };
        reached += 1;
        repaired += u32::from(!outcome.repairs.is_empty());
        let written = canonical::to_text(&outcome.project);
        let again = restore(written.as_bytes()).expect("what is written is read");
        assert!(again.repairs.is_empty(), "file {turn}: {:?}", again.repairs);
        assert_eq!(canonical::to_text(&again.project), written, "file {turn}");
    }
    let share = f64::from(reached) / f64::from(files);
    println!("files: {:.1} % reached validation, {repaired} repaired, slowest {slowest:?}", 100.0 * share);
    assert!(share >= LEAST_SHARE && slowest < PATIENCE);
}

fn texts(kind: &str, text: &str, count: u32, random: &mut Random, read: impl Fn(&str) -> bool) {
    let (mut whole, mut slowest) = (0u32, Duration::ZERO);
    for _ in 0..count {
        let spoilt = String::from_utf8_lossy(&spoil_bytes(text, &random.mutations())).into_owned();
        let begin = Instant::now();
        whole += u32::from(read(&spoilt));
        slowest = slowest.max(begin.elapsed());
    }
    println!("{kind}: {whole} of {count} read, slowest {slowest:?}");
    assert!(slowest < PATIENCE);
}

struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// One to five changes.
    fn mutations(&mut self) -> Vec<(u32, u8)> {
        (0..=self.next() % 5).map(|_| (self.next() as u32, self.next() as u8)).collect()
    }
}
