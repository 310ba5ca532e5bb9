//! What is thrown at the C ABI: each door takes any bytes, makes calls of them as a program in C could, and holds the answers to the rules
//! at the head of the header. Nothing here may crash, panic, answer with a fault of the library, or call NaN a result.
//!
//! A fuzzer runs the doors (`tests/fuzz/run`), and a test runs them over the inputs that are kept (`cargo test`).

mod feed;
mod watched;

mod documents;
mod formulas;
mod handles;
mod hot;
mod matching;
mod numbers;
mod parts;
mod places;
mod records;

pub use documents::documents;
pub use formulas::formulas;
pub use handles::handles;
pub use numbers::numbers;
pub use parts::parts;
pub use records::records;

/// Every door with its name.
pub const DOORS: [(&str, fn(&[u8])); 6] = [
    ("documents", documents),
    ("numbers", numbers),
    ("handles", handles),
    ("formulas", formulas),
    ("records", records),
    ("parts", parts),
];
