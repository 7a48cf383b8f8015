//! Putting lists in order, by one sort for all of them.
//!
//! The sort of the standard library is made anew for every type and every comparison, five kilobytes each. This one
//! sorts places, and then swaps the entries into them. Stable; lists that are in order already are only looked through.
//! Where a search turns on sorting plain numbers, `sort_by(f64::total_cmp)` stays.

use core::cmp::Ordering;

/// Puts a list in order.
pub fn by<T>(list: &mut [T], mut compare: impl FnMut(&T, &T) -> Ordering) {
    if list.is_sorted_by(|one, next| compare(one, next).is_le()) {
        return;
    }
    let mut places = places(list.len(), &mut |one, other| compare(&list[one], &list[other]));
    for at in 0..list.len() {
        while places[at] != at {
            let to = places[at];
            list.swap(at, to);
            places.swap(at, to);
        }
    }
}

/// Puts a list in the order of a key.
pub fn by_key<T, K: Ord>(list: &mut [T], mut key: impl FnMut(&T) -> K) {
    by(list, |one, other| key(one).cmp(&key(other)));
}

/// Where each entry belongs.
fn places(count: usize, compare: &mut dyn FnMut(usize, usize) -> Ordering) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|one, other| compare(*one, *other));
    let mut places = vec![0; count];
    for (place, entry) in order.into_iter().enumerate() {
        places[entry] = place;
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn sorts_as_the_standard_library_does(list in prop::collection::vec((0..9_u8, 0..9_u8), 0..40)) {
            let mut ours = list.clone();
            by_key(&mut ours, |pair| pair.0);
            let mut theirs = list;
            theirs.sort_by_key(|pair| pair.0);
            prop_assert_eq!(ours, theirs, "stable, too");
        }
    }
}
