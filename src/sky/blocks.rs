//! A long sequence, computed in blocks when first asked for and then kept.
//!
//! The values depend on nothing but their number, so keeping them changes no answer: it is a table that fills itself.

use std::sync::OnceLock;

/// `LENGTH` numbered values a block, from number `first` on.
#[derive(Debug)]
pub(super) struct Blocks<T, const LENGTH: usize> {
    first: i64,
    blocks: Vec<OnceLock<Box<[T]>>>,
}

impl<T: Copy, const LENGTH: usize> Blocks<T, LENGTH> {
    /// Room for all numbers from `first` up to `end`.
    pub(super) fn new(first: i64, end: i64) -> Self {
        let count = usize::try_from(end - first).unwrap_or(0).div_ceil(LENGTH);
        Self { first, blocks: (0..count).map(|_| OnceLock::new()).collect() }
    }

    /// The value of `number`; one that there is no room for is computed each time.
    pub(super) fn get(&self, number: i64, compute: impl Fn(i64) -> T) -> T {
        let Some(index) = number.checked_sub(self.first).and_then(|index| usize::try_from(index).ok()) else {
            return compute(number);
        };
        let Some(block) = self.blocks.get(index / LENGTH) else { return compute(number) };
        let values = block.get_or_init(|| {
            let from = number - (index % LENGTH) as i64;
            (from..from + LENGTH as i64).map(&compute).collect()
        });
        values[index % LENGTH]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_their_values() {
        let squares = Blocks::<i64, 7>::new(-5, 20);
        for number in [-5, 19, 3, 3, 22, 100, -6, i64::MIN / 4] {
            assert_eq!(squares.get(number, |n| n.wrapping_mul(n)), number.wrapping_mul(number));
        }
    }
}
