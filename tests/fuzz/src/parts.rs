use crate::feed::Feed;
use crate::{hot, matching};

/// The door of the parts: pistons and bores at their temperatures, alone and in a fit, and measured pistons matched to bores.
///
/// # Panics
/// When an answer breaks a rule.
pub fn parts(data: &[u8]) {
    let mut feed = Feed(data);
    match feed.byte() % 4 {
        0..3 => hot::hot(&mut feed),
        _ => matching::matching(&mut feed),
    }
}
